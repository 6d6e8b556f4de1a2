using System.Text;
using SkiaSharp;

namespace Refettle.Paper.Tests;

/// <summary>Sizes are read from the JPEG's frame header (ITU-T T.81, B.2.2), not by the library that wrote it.</summary>
public sealed class ScaledPicturesTests : IDisposable
{
    private readonly string _file = Path.GetTempFileName();

    [Theory]
    [InlineData(1200, 64, 48)]
    [InlineData(40, 40, 30)]
    [InlineData(16, 16, 12)]
    [InlineData(1, 1, 1)]
    public void A_picture_is_made_as_small_as_asked_for_and_no_larger(int most, int width, int height)
    {
        File.WriteAllBytes(_file, Snapshots.Jpeg);
        Assert.Equal((width, height), Size(new ScaledPictures(_ => _file).Read("a", most)!));
    }

    [Fact]
    public void A_large_picture_comes_out_at_the_size_asked_for()
    {
        File.WriteAllBytes(_file, Bars(4000, 3000, 16, SKEncodedImageFormat.Jpeg));
        Assert.Equal((1200, 900), Size(new ScaledPictures(_ => _file).Read("a", 1200)!));
    }

    /// <summary>A grid of pixels carries up to half a cycle a pixel and nothing finer (C. E. Shannon,
    /// Communication in the presence of noise, 1949): what is well inside stays, what lies beyond fades and does not turn into
    /// strong bars that were never there.</summary>
    [Theory]
    [InlineData(2000, 10, SKEncodedImageFormat.Jpeg, true)]
    [InlineData(2000, 2, SKEncodedImageFormat.Jpeg, false)]
    [InlineData(4000, 20, SKEncodedImageFormat.Jpeg, true)]
    [InlineData(4000, 4, SKEncodedImageFormat.Jpeg, false)]
    [InlineData(4000, 20, SKEncodedImageFormat.Png, true)]
    [InlineData(4000, 2, SKEncodedImageFormat.Png, false)]
    public void Fine_lines_stay_and_those_finer_than_the_grid_fade(int width, int period, SKEncodedImageFormat form, bool stay)
    {
        File.WriteAllBytes(_file, Bars(width, 200, period, form));
        var contrast = Contrast(new ScaledPictures(_ => _file).Read("a", 1200)!);
        Assert.True(stay ? contrast > 0.8 : contrast < 0.5, $"{contrast}");
    }

    /// <summary>Where the first row and the first column belong, for each orientation: CIPA DC-008 (Exif), 4.6.4.</summary>
    [Theory]
    [InlineData(1, "top left", "top right")]
    [InlineData(2, "top right", "top left")]
    [InlineData(3, "bottom right", "bottom left")]
    [InlineData(4, "bottom left", "bottom right")]
    [InlineData(5, "top left", "bottom left")]
    [InlineData(6, "top right", "bottom right")]
    [InlineData(7, "bottom right", "top right")]
    [InlineData(8, "bottom left", "top left")]
    public void A_picture_that_lies_on_its_side_is_turned_upright(byte orientation, string first, string next)
    {
        byte[] exif = [.. "Exif\0\0MM\0*"u8, 0, 0, 0, 8, 0, 1, 1, 0x12, 0, 3, 0, 0, 0, 1, 0, orientation, 0, 0, 0, 0, 0, 0];
        var jpeg = Corner();
        File.WriteAllBytes(_file, [.. jpeg[..2], 0xFF, 0xE1, 0, (byte)(exif.Length + 2), .. exif, .. jpeg[2..]]);
        using var read = SKBitmap.Decode(new ScaledPictures(_ => _file).Read("a", 40));
        Assert.Equal(orientation < 5 ? (40, 20) : (20, 40), (read.Width, read.Height));
        Assert.InRange(At(first), 230, 255);
        Assert.InRange(At(next), 100, 156);

        int At(string corner) =>
            read.GetPixel(corner.EndsWith("left", StringComparison.Ordinal) ? 2 : read.Width - 3,
                corner.StartsWith("top", StringComparison.Ordinal) ? 2 : read.Height - 3).Red;
    }

    [Fact]
    public void What_is_clear_in_a_picture_lies_on_white()
    {
        using var clear = new SKBitmap(new SKImageInfo(80, 40));
        File.WriteAllBytes(_file, clear.Encode(SKEncodedImageFormat.Png, 100).ToArray());
        using var read = SKBitmap.Decode(new ScaledPictures(_ => _file).Read("a", 40));
        Assert.Equal((40, 20, SKColors.White), (read.Width, read.Height, read.GetPixel(20, 10)));
    }

    [Fact]
    public void The_place_that_a_camera_writes_is_not_taken_over()
    {
        var exif = Encoding.ASCII.GetBytes("Exif\0\0GPSLatitude 52.1");
        byte[] marked = [.. Snapshots.Jpeg[..2], 0xFF, 0xE1, 0, (byte)(exif.Length + 2), .. exif, .. Snapshots.Jpeg[2..]];
        File.WriteAllBytes(_file, marked);
        var read = new ScaledPictures(_ => _file).Read("a", 1200)!;
        Assert.Equal((64, 48), Size(read));
        Assert.DoesNotContain("GPS", Encoding.Latin1.GetString(read), StringComparison.Ordinal);
        Assert.DoesNotContain("Exif", Encoding.Latin1.GetString(read), StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_no_picture_or_not_here_is_none()
    {
        File.WriteAllText(_file, "no picture");
        Assert.Null(new ScaledPictures(_ => _file).Read("a", 100));
        Assert.Null(new ScaledPictures(_ => null).Read("a", 100));
        Assert.Null(new ScaledPictures(_ => _file + "-gone").Read("a", 100));
    }

    public void Dispose() => File.Delete(_file);

    /// <summary>80 × 40 pixels, black but for a white corner where first row and column meet, and a grey
    /// one at the other end of the row.</summary>
    private static byte[] Corner() => Drawn(80, 40, SKEncodedImageFormat.Jpeg, canvas =>
    {
        using var white = new SKPaint { Color = SKColors.White };
        using var grey = new SKPaint { Color = SKColors.Gray };
        canvas.DrawRect(0, 0, 16, 16, white);
        canvas.DrawRect(64, 0, 16, 16, grey);
    });

    /// <summary>Upright bars, black and white.</summary>
    private static byte[] Bars(int width, int height, int period, SKEncodedImageFormat form) => Drawn(width, height, form, canvas =>
    {
        using var white = new SKPaint { Color = SKColors.White };
        for (var x = 0; x < width; x += period)
            canvas.DrawRect(x, 0, period / 2, height, white);
    });

    private static byte[] Drawn(int width, int height, SKEncodedImageFormat form, Action<SKCanvas> draw)
    {
        using var bitmap = new SKBitmap(new SKImageInfo(width, height));
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(SKColors.Black);
        draw(canvas);
        using var data = bitmap.Encode(form, 95);
        return data.ToArray();
    }

    /// <summary>Between the lightest and the darkest in the middle of a row, 0 to 1.</summary>
    private static double Contrast(byte[] jpeg)
    {
        using var bitmap = SKBitmap.Decode(jpeg);
        var row = Enumerable.Range(100, bitmap.Width - 200).Select(x => bitmap.GetPixel(x, bitmap.Height / 2).Red).ToList();
        return (row.Max() - row.Min()) / 255.0;
    }

    private static (int Width, int Height) Size(byte[] jpeg)
    {
        for (var at = 2; at < jpeg.Length; at += 2 + (jpeg[at + 2] << 8) + jpeg[at + 3])
        {
            if (jpeg[at + 1] is >= 0xC0 and <= 0xC2)
                return ((jpeg[at + 7] << 8) + jpeg[at + 8], (jpeg[at + 5] << 8) + jpeg[at + 6]);
        }

        throw new InvalidDataException("There is no frame.");
    }
}
