using Refettle.Imaging;

namespace Refettle.Tests.Imaging;

public sealed class SharpnessTests
{
    private const int Width = 160;
    private const int Height = 120;

    /// <summary>By SciPy's convolve2d and NumPy's var: sharpness.py beside this file.</summary>
    public static TheoryData<string, bool, double> Table => new()
    {
        { "flat", false, 0.000000000 },
        { "flat", true, 0.000000000 },
        { "ramp", false, 1.000000000 },
        { "ramp", true, 1.030090084 },
        { "lettering", false, 28886.118858614 },
        { "lettering", true, 43.045804689 },
        { "waves", false, 1.182578846 },
        { "waves", true, 0.518290064 },
        { "speckle", false, 107580.416031156 },
        { "speckle", true, 5.431003086 },
    };

    [Theory]
    [MemberData(nameof(Table))]
    public void It_is_what_scipy_finds(string picture, bool blurred, double expected) =>
        Assert.Equal(expected, Sharpness.Of(Picture(picture, blurred), Width, Height)!.Value, 1e-6);

    [Theory]
    [InlineData("lettering")]
    [InlineData("speckle")]
    public void What_has_detail_is_sharp_until_it_is_blurred(string picture)
    {
        Assert.False(Sharpness.IsBlurred(Sharpness.Of(Picture(picture, false), Width, Height)!.Value));
        Assert.True(Sharpness.IsBlurred(Sharpness.Of(Picture(picture, true), Width, Height)!.Value));
    }

    [Fact]
    public void Brightness_alone_changes_nothing()
    {
        var picture = Picture("lettering", false);
        var brighter = Array.ConvertAll(picture, value => (byte)(value + 20));
        Assert.Equal(Sharpness.Of(picture, Width, Height), Sharpness.Of(brighter, Width, Height));
    }

    [Fact]
    public void Half_the_contrast_is_a_quarter_of_the_variance()
    {
        var picture = Array.ConvertAll(Picture("lettering", false), value => (byte)(value & 0xFE));
        var fainter = Array.ConvertAll(picture, value => (byte)(value / 2));
        Assert.Equal(Sharpness.Of(picture, Width, Height)!.Value / 4, Sharpness.Of(fainter, Width, Height)!.Value, 1e-9);
    }

    [Fact]
    public void A_picture_of_two_lines_has_none()
    {
        Assert.Null(Sharpness.Of(new byte[2 * 9], 9, 2));
        Assert.Throws<ArgumentException>(() => Sharpness.Of(new byte[5], 9, 2));
    }

    private static byte[] Picture(string name, bool blurred)
    {
        var values = new int[Height * Width];
        for (var i = 0; i < values.Length; i++)
            values[i] = Value(name, i % Width, i / Width);
        for (var pass = 0; blurred && pass < 3; pass++)
            values = Blur(values);
        return Array.ConvertAll(values, value => (byte)value);
    }

    private static int Value(string name, int x, int y) => name switch
    {
        "flat" => 130,
        "ramp" => x + (y / 2),
        "lettering" => (((x / 5) + (y / 7)) % 2 * 180) + 30,
        "waves" => (Math.Abs((x % 64) - 32) * 3) + (Math.Abs((y % 80) - 40) * 2),
        _ => ((x * 131) + (y * 197) + (x * y * 7)) % 256,
    };

    /// <summary>The mean of 5 × 5, the picture mirrored at its edges.</summary>
    private static int[] Blur(int[] values)
    {
        var blurred = new int[values.Length];
        for (var y = 0; y < Height; y++)
        {
            for (var x = 0; x < Width; x++)
            {
                var sum = 0;
                for (var dy = -2; dy <= 2; dy++)
                {
                    for (var dx = -2; dx <= 2; dx++)
                        sum += values[(Mirror(y + dy, Height) * Width) + Mirror(x + dx, Width)];
                }

                blurred[(y * Width) + x] = sum / 25;
            }
        }

        return blurred;
    }

    private static int Mirror(int place, int length) => place < 0 ? -place - 1 : place >= length ? (2 * length) - place - 1 : place;
}
