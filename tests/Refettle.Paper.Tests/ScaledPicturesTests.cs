using System.Text;

namespace Refettle.Paper.Tests;

/// <summary>Sizes are read from the JPEG's frame header (ITU-T T.81, B.2.2), not by the library that wrote it.</summary>
public sealed class ScaledPicturesTests : IDisposable
{
    private readonly string _file = Path.GetTempFileName();

    [Theory]
    [InlineData(1200, 64, 48)]
    [InlineData(40, 40, 30)]
    [InlineData(16, 16, 12)]
    public void A_picture_is_made_as_small_as_asked_for_and_no_larger(int most, int width, int height)
    {
        File.WriteAllBytes(_file, Snapshots.Jpeg);
        Assert.Equal((width, height), Size(new ScaledPictures(_ => _file).Read("a", most)!));
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
