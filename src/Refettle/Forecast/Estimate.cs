namespace Refettle.Forecast;

/// <summary>A figure from sampling with its standard error.</summary>
public readonly record struct Estimate(double Value, double StandardError)
{
    /// <summary>A chance seen <paramref name="hits"/> times among <paramref name="all"/>. The
    /// standard error is taken at (hits + 1)/(all + 2), so that it never claims to be 0.</summary>
    public static Estimate OfChance(long hits, long all)
    {
        var smooth = (hits + 1.0) / (all + 2.0);
        return new((double)hits / all, Math.Sqrt(smooth * (1 - smooth) / all));
    }

    /// <summary>The mean of values; two or more.</summary>
    public static Estimate OfMean(ReadOnlySpan<double> values)
    {
        var (sum, squares) = (0.0, 0.0);
        foreach (var value in values)
            sum += value;
        var mean = sum / values.Length;
        foreach (var value in values)
            squares += (value - mean) * (value - mean);
        return new(mean, Math.Sqrt(squares / (values.Length - 1) / values.Length));
    }

    public override string ToString() => $"{Value:0.###} ± {StandardError:0.###}";
}
