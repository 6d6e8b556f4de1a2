using System.Text.Json;
using Microsoft.AspNetCore.Http.Metadata;

namespace Refettle.Server.Api;

/// <summary>The most that a request's body may be, in bytes.</summary>
internal sealed record BodyLimit(long Bytes) : IRequestSizeLimitMetadata
{
    public long? MaxRequestBodySize => Bytes;
}

/// <summary>Reads what was sent.</summary>
internal static class Body
{
    /// <summary>The value, or the one thing that is wrong with it.</summary>
    public static async Task<Result<T>> ReadAsync<T>(HttpRequest request, CancellationToken cancel)
    {
        try
        {
            return await JsonSerializer.DeserializeAsync<T>(request.Body, ExchangeJson.Options, cancel) is { } value
                ? Result<T>.Good(value)
                : Result<T>.Bad(new Fault("the body", "it is null", "Send the thing itself."));
        }
        catch (JsonException problem)
        {
            return Result<T>.Bad(new Fault($"the body at {problem.Path ?? "$"}", "it is not the JSON that is expected here",
                "See the description of the exchange form."));
        }
        catch (BadHttpRequestException problem) when (problem.StatusCode == StatusCodes.Status413PayloadTooLarge)
        {
            return Result<T>.Bad(new Fault("the body", "it is larger than is taken at once", "Send it in smaller pieces."));
        }
        catch (BadHttpRequestException)
        {
            return Result<T>.Bad(new Fault("the body", "it broke off", "Send it again."));
        }
    }
}
