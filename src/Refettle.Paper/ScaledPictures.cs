using SkiaSharp;

namespace Refettle.Paper;

/// <summary>Pictures from files, made as small as paper needs them. Nothing but the picture itself is taken over: no place, no camera.</summary>
/// <param name="pathOf">Where a picture is kept; null when it is not here.</param>
public sealed class ScaledPictures(Func<string, string?> pathOf) : IPictureSource
{
    private const int Quality = 80;

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
        using var scaled = Fit(decoded, mostPixels);
        using var image = SKImage.FromBitmap(scaled);
        using var data = image.Encode(SKEncodedImageFormat.Jpeg, Quality);
        return data.ToArray();
    }

    /// <summary>Decoded at the smallest size that the format gives for free and that is not smaller than asked for.</summary>
    private static SKBitmap? Decode(SKCodec codec, int mostPixels)
    {
        var size = codec.GetScaledDimensions((float)mostPixels / Math.Max(codec.Info.Width, codec.Info.Height));
        if (Math.Max(size.Width, size.Height) < mostPixels)
            size = new(codec.Info.Width, codec.Info.Height);
        var bitmap = new SKBitmap(new SKImageInfo(size.Width, size.Height, SKColorType.Rgba8888, SKAlphaType.Opaque));
        if (codec.GetPixels(bitmap.Info, bitmap.GetPixels()) is SKCodecResult.Success or SKCodecResult.IncompleteInput)
            return bitmap;
        bitmap.Dispose();
        return null;
    }

    private static SKBitmap Fit(SKBitmap bitmap, int mostPixels)
    {
        var scale = (double)mostPixels / Math.Max(bitmap.Width, bitmap.Height);
        return scale >= 1
            ? bitmap.Copy()
            : bitmap.Resize(new SKImageInfo((int)Math.Round(bitmap.Width * scale), (int)Math.Round(bitmap.Height * scale), SKColorType.Rgba8888, SKAlphaType.Opaque), new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Linear)) ?? bitmap.Copy();
    }
}
