using MathNet.Numerics.Distributions;

namespace Refettle.Forecast.Sampling;

/// <summary>Quantile functions in their plainest form: on the range 0 to 1, or of median 1. All others
/// are these, shifted and scaled.</summary>
internal static class Quantiles
{
    private const int Grid = 1024;
    private const double Large = 200;

    public static Func<double, double> Normal { get; } = u => MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, u);

    public static Func<double, double> LogNormal(double sigma) => u => Math.Exp(sigma * Normal(u));

    /// <summary>The deviation whose square is inverse-gamma with this shape and scale 1.</summary>
    /// <remarks>From a shape of 200 on by the cube of a normal (Wilson, Hilferty 1931), which is then right to four digits.</remarks>
    public static Func<double, double> Deviation(double shape) => shape < Large
        ? u => 1 / Math.Sqrt(Gamma.InvCDF(shape, 1, 1 - u))
        : u => 1 / Math.Sqrt(shape * Math.Pow(1 - 1 / (9 * shape) + Normal(1 - u) / (3 * Math.Sqrt(shape)), 3));

    /// <param name="likely">Where the likeliest lies, 0 to 1.</param>
    public static Func<double, double> Triangle(double likely) =>
        u => u < likely ? Math.Sqrt(u * likely) : 1 - Math.Sqrt((1 - u) * (1 - likely));

    /// <summary>The PERT form of the beta distribution.</summary>
    /// <param name="likely">Where the likeliest lies, 0 to 1.</param>
    public static Func<double, double> Pert(double likely)
    {
        var curve = Cumulative(likely);
        return u =>
        {
            var place = Array.BinarySearch(curve, u);
            place = Math.Clamp(place < 0 ? ~place : place, 1, Grid);
            return (place - 1 + (u - curve[place - 1]) / (curve[place] - curve[place - 1])) / Grid;
        };
    }

    /// <summary>The cumulative chance on an even grid, by Simpson's rule. The two shapes add up to 6, so one figure says all.</summary>
    private static double[] Cumulative(double likely)
    {
        var sums = new double[Grid + 1];
        for (var i = 1; i <= Grid; i++)
            sums[i] = sums[i - 1] + Density((i - 1.0) / Grid) + 4 * Density((i - 0.5) / Grid) + Density((double)i / Grid);
        return Array.ConvertAll(sums, sum => sum / sums[^1]);

        double Density(double x) => Math.Pow(x, 4 * likely) * Math.Pow(1 - x, 4 * (1 - likely));
    }
}
