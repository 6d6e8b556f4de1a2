using Refettle.Imaging;
using Refettle.Logbook;
using Refettle.Web.Garage;

namespace Refettle.Web.Capture;

/// <summary>What a picture goes through before it is in the log: everything but the picture taken out, named by
/// its hash, kept in this browser.</summary>
public static class PhotoTaker
{
    /// <summary>What is said of a file that this browser cannot show. Nothing of it is kept, and it is not changed.</summary>
    /// <param name="file">Null when it cannot be read at all.</param>
    public static Fault Unshown(byte[]? file) => PictureFile.IsHeic(file)
        ? new("photo", "it is a HEIC picture, and this browser cannot show those; nothing was kept of it, the file is where it was",
            "Save it as a JPEG and choose that. A phone's camera can be set to save JPEG (\"most compatible\").")
        : new("photo", "this browser cannot read that file as a picture", "Choose a JPEG, or let the camera save one.");

    /// <summary>The entry to write; the pictures are kept in this browser when this returns. An original
    /// that cannot be made plain is left out, with a note: the picture itself is worth more.</summary>
    /// <param name="original">The file as the camera made it; null when that is not wanted.</param>
    public static async Task<Result<PhotoTaken>> TakeAsync(
        PhotoOutbox outbox, PreparedPhoto prepared, byte[]? original, ValueList<string> of, string? says)
    {
        var (picture, small, whole) = (PictureFile.Plain(prepared.Picture), PictureFile.Plain(prepared.Small),
            original is null ? null : PictureFile.Plain(original));
        var faults = new[] { picture, small }.Where(plain => !plain.IsGood).SelectMany(plain => plain.Faults).ToList();
        if (faults.Count > 0)
            return Result<PhotoTaken>.Bad(faults);
        var photo = new Photo
        {
            Hash = await KeepAsync(outbox, picture.Value, false),
            Small = await KeepAsync(outbox, small.Value, true),
            Original = whole is { IsGood: true } ? await KeepAsync(outbox, whole.Value, false) : null,
            Width = prepared.Width,
            Height = prepared.Height,
            Of = of,
            Says = says,
            Sharpness = Sharpness.Of(prepared.Grey, prepared.GreyWidth, prepared.GreyHeight) is { } sharpness
                ? Math.Round(sharpness, 1)
                : null,
        };
        return Result<PhotoTaken>.Good(new(photo), whole is { IsGood: false } ? [LeftOut(original!, whole.Faults[0])] : []);
    }

    private static Fault LeftOut(byte[] original, Fault fault) => new("the original",
        PictureFile.IsHeic(original) ? "it is a HEIC file, out of which the place cannot be taken" : fault.Found,
        "It was left out; the picture itself is kept, as a JPEG.")
    {
        Severity = Severity.Note,
    };

    private static async Task<string> KeepAsync(PhotoOutbox outbox, byte[] bytes, bool isSmall)
    {
        var hash = ContentHash.Of(bytes);
        await outbox.KeepAsync(hash, bytes, isSmall);
        return hash;
    }
}
