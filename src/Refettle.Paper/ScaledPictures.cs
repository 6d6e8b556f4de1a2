using SkiaSharp;

namespace Refettle.Paper;

/// <summary>Pictures from files, made as small as paper needs them. Nothing but the picture itself is
/// taken over: no place, no camera.</summary>
/// <param name="pathOf">Where a picture is kept; null when it is not here.</param>
public sealed class ScaledPictures(Func<string, string?> pathOf) : IPictureSource
{
    private const int Quality = 80;

    /// <summary>JPEG decodes at any number of eighths of its size for less than the whole (ITU-T T.81 codes blocks of 8 × 8).</summary>
    private const int Eighths = 8;

    public byte[]? Read(string name, int mostPixels)
    {
        if (pathOf(name) is not { } path || !File.Exists(path))
            return null;
        using var codec = SKCodec.Create(path);
        if (codec is null)
            return null;
        using var decoded = Decode(codec, mostPixels);
        if (decoded is null)
            return null;
        using var scaled = Fit(decoded, mostPixels, codec.EncodedOrigin);
        using var data = scaled.Encode(SKEncodedImageFormat.Jpeg, Quality);
        return data.ToArray();
    }

    /// <summary>Decoded at the smallest size that the format gives for free and that is not smaller than asked for.</summary>
    private static SKBitmap? Decode(SKCodec codec, int mostPixels)
    {
        var eighths = Math.Ceiling((double)Eighths * mostPixels / Math.Max(codec.Info.Width, codec.Info.Height));
        var size = codec.GetScaledDimensions((float)Math.Min(1, eighths / Eighths));
        var bitmap = Bitmap(size.Width, size.Height, SKAlphaType.Premul);
        if (codec.GetPixels(bitmap.Info, bitmap.GetPixels()) is SKCodecResult.Success or SKCodecResult.IncompleteInput)
            return bitmap;
        bitmap.Dispose();
        return null;
    }

    /// <summary>Turned upright and drawn on white at the size asked for.</summary>
    private static SKBitmap Fit(SKBitmap bitmap, int mostPixels, SKEncodedOrigin origin)
    {
        var scale = Math.Min(1, (double)mostPixels / Math.Max(bitmap.Width, bitmap.Height));
        var (width, height) = (Math.Max(1, (int)Math.Round(bitmap.Width * scale)), Math.Max(1, (int)Math.Round(bitmap.Height * scale)));
        var lies = origin >= SKEncodedOrigin.LeftTop;
        var upright = Bitmap(lies ? height : width, lies ? width : height, SKAlphaType.Opaque);
        using var canvas = new SKCanvas(upright);
        canvas.Clear(SKColors.White);
        using var image = SKImage.FromPixels(bitmap.PeekPixels());
        canvas.SetMatrix(Turn(origin, upright.Width, upright.Height));
        canvas.DrawImage(image, new SKRect(0, 0, width, height), Sampling(scale));
        return upright;
    }

    /// <summary>From the picture as it is coded to the picture upright, by where its first row and column
    /// belong (CIPA DC-008, orientation).</summary>
    private static SKMatrix Turn(SKEncodedOrigin origin, float width, float height) => origin switch
    {
        SKEncodedOrigin.TopRight => new(-1, 0, width, 0, 1, 0, 0, 0, 1),
        SKEncodedOrigin.BottomRight => new(-1, 0, width, 0, -1, height, 0, 0, 1),
        SKEncodedOrigin.BottomLeft => new(1, 0, 0, 0, -1, height, 0, 0, 1),
        SKEncodedOrigin.LeftTop => new(0, 1, 0, 1, 0, 0, 0, 0, 1),
        SKEncodedOrigin.RightTop => new(0, -1, width, 1, 0, 0, 0, 0, 1),
        SKEncodedOrigin.RightBottom => new(0, -1, width, -1, 0, height, 0, 0, 1),
        SKEncodedOrigin.LeftBottom => new(0, 1, 0, -1, 0, height, 0, 0, 1),
        _ => SKMatrix.Identity,
    };

    // Down to half the size every pixel counts without averages made first, which would blur and take most of the time.
    private static SKSamplingOptions Sampling(double scale) =>
        new(SKFilterMode.Linear, scale < 0.5 ? SKMipmapMode.Linear : SKMipmapMode.None);

    /// <summary>In the order of bytes that the library is quickest with.</summary>
    private static SKBitmap Bitmap(int width, int height, SKAlphaType alpha) =>
        new(new SKImageInfo(width, height, SKImageInfo.PlatformColorType, alpha));
}
