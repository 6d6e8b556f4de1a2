using MathNet.Numerics.Distributions;

namespace Refettle.Bench.Chance;

/// <summary>A duration that may run long: the lognormal distribution.</summary>
/// <param name="Median">More than 0.</param>
/// <param name="Sigma">Deviation of the logarithm, more than 0.</param>
public readonly record struct Skewed(double Median, double Sigma)
{
    public double Mean => Median * Math.Exp(Sigma * Sigma / 2);

    public double StandardDeviation => Mean * Math.Sqrt(Math.Exp(Sigma * Sigma) - 1);

    /// <summary>From the median and the value that nine in ten stay below, which is more than the median.</summary>
    public static Skewed FromNineInTen(double median, double nineInTen) =>
        new(median, Math.Log(nineInTen / median) / Normal.InvCDF(0, 1, 0.9));

    public double Quantile(double probability) => Median * Math.Exp(Sigma * Normal.InvCDF(0, 1, probability));

    /// <summary>Probability of more than this; value more than 0.</summary>
    public double Beyond(double value) => Normal.CDF(0, 1, -Math.Log(value / Median) / Sigma);
}
