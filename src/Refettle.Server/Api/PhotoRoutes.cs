using Refettle.Imaging;
using Refettle.Server.Guards;
using Refettle.Storage;
using Refettle.Web.Garage;

namespace Refettle.Server.Api;

/// <summary>Pictures, named by their hashes: giving them out, and taking them in piece by piece.</summary>
internal static class PhotoRoutes
{
    /// <summary>What the body of a piece is declared to be.</summary>
    public const string PieceType = "application/octet-stream";

    /// <summary>The most that one piece may have, in bytes.</summary>
    private const int MostOfPiece = 4_000_000;

    /// <summary>A picture of a name never changes, so whoever has it need not ask again.</summary>
    private const string ForEver = "private, max-age=31536000, immutable";

    public static void Map(IEndpointRouteBuilder api, PhotoStore? photos)
    {
        if (photos is null)
            return;
        api.MapGet("photos/{hash}", (string hash, HttpContext context) => Give(photos, hash, context));
        api.MapGet("photos/{hash}/progress", (string hash) => Results.Json(Told(photos.Progress(hash)), ExchangeJson.Options));
        api.MapPut("photos/{hash}",
            (string hash, long from, long of, HttpRequest request, CancellationToken cancel) => TakeAsync(photos, hash, from, of, request,
                cancel))
            .WithMetadata(new BodyLimit(MostOfPiece));
    }

    /// <summary>Whether a request carries a piece of a picture, the one thing that is not sent as JSON.</summary>
    public static bool IsPiece(HttpRequest request) =>
        HttpMethods.IsPut(request.Method) && request.Path.StartsWithSegments("/api/photos") && request.ContentType == PieceType;

    private static IResult Give(PhotoStore photos, string hash, HttpContext context)
    {
        if (photos.PathOf(hash) is not { } path)
            return Problems.Of(StatusCodes.Status404NotFound, "This picture is not here", "It may still be on the phone that took it.");
        context.Response.Headers.CacheControl = ForEver;
        return Results.File(path, Type(path));
    }

    private static PhotoArrived Told(PhotoProgress progress) => new(progress.Received, progress.Kept);

    private static string Type(string path)
    {
        Span<byte> first = stackalloc byte[16];
        using var file = File.OpenRead(path);
        var count = file.ReadAtLeast(first, first.Length, throwOnEndOfStream: false);
        return PictureFile.FormOf(first[..count]) is { } form ? PictureFile.MediaType(form) : PieceType;
    }

    private static async Task<IResult> TakeAsync(
        PhotoStore photos, string hash, long from, long of, HttpRequest request, CancellationToken cancel)
    {
        using var piece = new MemoryStream();
        try
        {
            await request.Body.CopyToAsync(piece, cancel);
        }
        catch (BadHttpRequestException problem)
        {
            return problem.StatusCode == StatusCodes.Status413PayloadTooLarge
                ? Problems.Of(
                    new Fault($"photo {hash}", "a piece is larger than is taken at once", $"Send pieces of at most {MostOfPiece} bytes."))
                : Problems.Of(new Fault($"photo {hash}", "a piece broke off on the way", "Send it again."));
        }

        var arrived = photos.Receive(hash, from, of, piece.GetBuffer().AsSpan(0, (int)piece.Length));
        return arrived.IsGood
            ? Results.Json(Told(arrived.Value), ExchangeJson.Options)
            : Problems.Of(StatusCodes.Status422UnprocessableEntity, "The picture was not taken", "See the faults.", arrived.Faults);
    }
}
