namespace Refettle.Bench.Chance;

/// <summary>A duration between a least and a most, likeliest somewhere between: the PERT form of the beta distribution.</summary>
/// <remarks>Least &lt; most, least ≤ likely ≤ most. All in one unit.</remarks>
public readonly record struct Pert(double Least, double Likely, double Most)
{
    public double Alpha => 1 + 4 * (Likely - Least) / (Most - Least);

    public double Beta => 1 + 4 * (Most - Likely) / (Most - Least);

    /// <summary>(a + 4 m + b) / 6.</summary>
    public double Mean => (Least + 4 * Likely + Most) / 6;

    /// <summary>Variance of this beta distribution, (mean − a)(b − mean)/7.</summary>
    public double Variance => (Mean - Least) * (Most - Mean) / 7;

    /// <summary>The textbook's ((b − a)/6)², which differs unless the likeliest lies at 15 % or 85 %.</summary>
    public double ClassicVariance => (Most - Least) * (Most - Least) / 36;

    /// <summary>The duration that is not exceeded with this probability, above 0 and below 1.</summary>
    public double Quantile(double probability) => Least + (Most - Least) * new Belief(Alpha, Beta).Quantile(probability);
}
