using Refettle.Server.Api;
using Refettle.Server.Pairing;
using Refettle.Web.Garage;

namespace Refettle.Server.Guards;

/// <summary>Turns away what was not sent by these pages.</summary>
/// <remarks>A name of another site that resolves to this machine fails on the host; a page of another site that posts here fails on
/// origin and on the header of our own, which no form can send and no script may without being asked first.</remarks>
internal sealed class RequestGuard(RequestDelegate next, Doorway doorway)
{
    public async Task InvokeAsync(HttpContext context)
    {
        if (Refusal(context.Request) is { } refusal)
            await refusal.ExecuteAsync(context);
        else
            await next(context);
    }

    private IResult? Refusal(HttpRequest request)
    {
        if (!doorway.Hosts.Contains(request.Host.Host, StringComparer.OrdinalIgnoreCase))
            return Problems.Of(StatusCodes.Status421MisdirectedRequest, $"This server is not {request.Host.Host}",
                $"Open it as {(doorway.Devices is null ? "127.0.0.1 or localhost" : string.Join(" or ", doorway.Hosts))}.");
        if (HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method))
            return null;
        // The form that pairs a device runs no script, so it can send neither header nor JSON; its code is what no other site knows.
        if (request.Path == PairingRoutes.Path && IsOwnOrigin(request))
            return null;
        if (!IsOwnOrigin(request) || request.Headers[ServerApi.OwnHeader].Count == 0)
            return Problems.Of(StatusCodes.Status403Forbidden, "This was not sent by the garage's own pages",
                $"A program sends the header {ServerApi.OwnHeader}: 1 and no foreign Origin.");
        return request.HasJsonContentType() || PhotoRoutes.IsPiece(request)
            ? null
            : Problems.Of(StatusCodes.Status415UnsupportedMediaType, "The body is not JSON", "Send Content-Type: application/json.");
    }

    private static bool IsOwnOrigin(HttpRequest request)
    {
        var origin = request.Headers.Origin.ToString();
        var site = request.Headers["Sec-Fetch-Site"].ToString();
        return (origin.Length == 0 || origin.Equals($"{request.Scheme}://{request.Host}", StringComparison.OrdinalIgnoreCase))
            && site is "" or "same-origin" or "none";
    }
}
