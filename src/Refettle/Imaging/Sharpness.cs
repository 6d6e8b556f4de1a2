namespace Refettle.Imaging;

/// <summary>Whether a photo is sharp enough to help later, by the variance of its Laplacian.</summary>
/// <remarks>The measure is LAPV of Pech-Pacheco et al., "Diatom autofocusing in brightfield
/// microscopy: a comparative study", ICPR 2000. It is taken on a picture brought down to <see cref="Longest"/> pixels, so that cameras
/// of different size can be compared. What it says depends on what is in the picture: a plain painted panel has a low figure though it is
/// sharp. So it warns and never refuses.</remarks>
public static class Sharpness
{
    /// <summary>Pixels of the longer side on which it is taken.</summary>
    public const int Longest = 640;

    /// <summary>Below this a photo is taken for blurred. Common practice, no source: 100 on 8-bit grey is what hobby programs begin with.
    /// The tests show on which side synthetic pictures fall.</summary>
    public const double Blurred = 100;

    /// <summary>Variance (of the population) of the four-neighbour Laplacian over the inner pixels.</summary>
    /// <param name="grey">Rows of 8-bit brightness, from the top left.</param>
    /// <returns>Null when the picture is smaller than 3 × 3.</returns>
    /// <exception cref="ArgumentException">There are not width × height values.</exception>
    public static double? Of(ReadOnlySpan<byte> grey, int width, int height)
    {
        if (grey.Length != (long)width * height)
            throw new ArgumentException($"{grey.Length} values are no picture of {width} × {height}.", nameof(grey));
        if (width < 3 || height < 3)
            return null;
        long sum = 0, squares = 0;
        for (var y = 1; y < height - 1; y++)
        {
            for (var x = 1; x < width - 1; x++)
            {
                var place = (y * width) + x;
                var value = grey[place - width] + grey[place + width] + grey[place - 1] + grey[place + 1] - (4 * grey[place]);
                sum += value;
                squares += value * value;
            }
        }

        double count = (width - 2L) * (height - 2L);
        return (squares / count) - (sum / count * (sum / count));
    }

    public static bool IsBlurred(double variance) => variance < Blurred;
}
