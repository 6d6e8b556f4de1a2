using Refettle.Imaging;
using Refettle.Logbook;
using Refettle.Web.Garage;

namespace Refettle.Web.Capture;

/// <summary>What a picture goes through before it is in the log: everything but the picture taken out, named by its hash, kept in this browser.</summary>
public static class PhotoTaker
{
    /// <summary>The entry to write; the pictures are kept in this browser when this returns.</summary>
    /// <param name="original">The file as the camera made it; null when that is not wanted.</param>
    public static async Task<Result<PhotoTaken>> TakeAsync(PhotoOutbox outbox, PreparedPhoto prepared, byte[]? original, ValueList<string> of, string? says)
    {
        var (picture, small, whole) = (PictureFile.Plain(prepared.Picture), PictureFile.Plain(prepared.Small), original is null ? null : PictureFile.Plain(original));
        var faults = new[] { picture, small, whole }.Where(plain => plain is { IsGood: false }).SelectMany(plain => plain!.Faults).ToList();
        if (faults.Count > 0)
            return Result<PhotoTaken>.Bad(faults);
        var photo = new Photo
        {
            Hash = await KeepAsync(outbox, picture.Value, false),
            Small = await KeepAsync(outbox, small.Value, true),
            Original = whole is null ? null : await KeepAsync(outbox, whole.Value, false),
            Width = prepared.Width,
            Height = prepared.Height,
            Of = of,
            Says = says,
            Sharpness = Sharpness.Of(prepared.Grey, prepared.GreyWidth, prepared.GreyHeight) is { } sharpness ? Math.Round(sharpness, 1) : null,
        };
        return Result<PhotoTaken>.Good(new(photo));
    }

    private static async Task<string> KeepAsync(PhotoOutbox outbox, byte[] bytes, bool isSmall)
    {
        var hash = ContentHash.Of(bytes);
        await outbox.KeepAsync(hash, bytes, isSmall);
        return hash;
    }
}
