namespace Refettle.Imaging;

/// <summary>The forms of picture files that are kept.</summary>
public enum PictureForm
{
    Jpeg,
    Png,
    WebP,
}

/// <summary>What a picture file is, and its bytes without anything but the picture.</summary>
public static class PictureFile
{
    private static readonly HashSet<string> HeicBrands = ["heic", "heix", "heim", "heis", "hevc", "hevx", "mif1", "msf1"];

    /// <summary>By its first bytes; null for what is not kept.</summary>
    public static PictureForm? FormOf(ReadOnlySpan<byte> bytes) => bytes switch
    {
        [0xFF, 0xD8, 0xFF, ..] => PictureForm.Jpeg,
        [0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A, ..] => PictureForm.Png,
        [(byte)'R', (byte)'I', (byte)'F', (byte)'F', _, _, _, _, (byte)'W', (byte)'E', (byte)'B', (byte)'P', ..] => PictureForm.WebP,
        _ => null,
    };

    /// <summary>HEIC, as phones of some makers save photos: an ISO base media file (ISO/IEC 14496-12)
    /// of a brand of ISO/IEC 23008-12.</summary>
    public static bool IsHeic(ReadOnlySpan<byte> bytes) =>
        bytes.Length >= 12 && bytes[4..8].SequenceEqual("ftyp"u8)
        && HeicBrands.Contains(System.Text.Encoding.Latin1.GetString(bytes[8..12]));

    public static string MediaType(PictureForm form) => form switch
    {
        PictureForm.Jpeg => "image/jpeg",
        PictureForm.Png => "image/png",
        _ => "image/webp",
    };

    /// <summary>The picture with all that tells where, by whom and with what it was taken left out,
    /// and whatever lies behind its end. Kept are the picture itself, its colour profile, which way is up and when it was taken. Doing
    /// it twice changes nothing more.</summary>
    public static Result<byte[]> Plain(byte[] bytes)
    {
        try
        {
            return FormOf(bytes) switch
            {
                PictureForm.Jpeg => Result<byte[]>.Good(JpegPlain.Of(bytes)),
                PictureForm.Png => Result<byte[]>.Good(PngPlain.Of(bytes)),
                PictureForm.WebP => Result<byte[]>.Good(WebPPlain.Of(bytes)),
                _ => Bad("it is no JPEG, PNG or WebP"),
            };
        }
        catch (PictureBrokenException broken)
        {
            return Bad(broken.Message);
        }
    }

    private static Result<byte[]> Bad(string found) =>
        Result<byte[]>.Bad(new Fault("picture", found, "Take it again, or save it as a JPEG."));
}

/// <summary>The file breaks off or contradicts itself; it never leaves this folder.</summary>
internal sealed class PictureBrokenException(string found) : Exception(found)
{
    public static PictureBrokenException AtEnd => new("it breaks off");
}
