using MathNet.Numerics.Distributions;
using Refettle.Forecast;

namespace Refettle.Tests.Forecast;

/// <summary>Sampled finishes against what probability theory says exactly. Whole units are fine
/// enough not to show: 10 000 to one.</summary>
public sealed class AnalyticTests
{
    private const double Unit = 10_000;

    private static readonly AnyCurve Exponential = new(u => -Unit * Math.Log(1 - u));

    private static IEnumerable<double> Sample(Net net) => Net.Finishes(net.Ask()).Select(finish => finish / Unit);

    private static Net SideBySide(int count, Uncertainty each) =>
        Enumerable.Range(0, count).Aggregate(new Net(), (net, i) => net.Add($"task {i}", each));

    private static Net InARow(int count, Uncertainty each) =>
        Enumerable.Range(0, count)
            .Aggregate(new Net(), (net, i) => i == 0 ? net.Add("task 0", each) : net.Add($"task {i}", each, $"task {i - 1}"));

    /// <summary>The mean of the greatest of n exponentials is the n-th harmonic number (Rényi's representation).</summary>
    [Theory]
    [InlineData(1, 1)]
    [InlineData(2, 3.0 / 2)]
    [InlineData(3, 11.0 / 6)]
    [InlineData(10, 7381.0 / 2520)]
    public void Greatest_of_exponentials_is_a_harmonic_number(int count, double harmonic) =>
        Sampled.Agrees(harmonic, Sample(SideBySide(count, Exponential)));

    /// <summary>Its variance is 1 + 1/4 + 1/9 + …</summary>
    [Fact]
    public void Greatest_of_three_exponentials_has_variance_49_of_36() =>
        Sampled.Agrees(49.0 / 36, Sample(SideBySide(3, Exponential)).Select(finish => Math.Pow(finish - 11.0 / 6, 2)));

    /// <summary>The sum of n exponentials is Erlang: mean n, variance n, and a known distribution.</summary>
    [Theory]
    [InlineData(2)]
    [InlineData(7)]
    [InlineData(40)]
    public void Sum_of_exponentials_is_Erlang(int count)
    {
        var finishes = Sample(InARow(count, Exponential)).ToList();
        Sampled.Agrees(count, finishes);
        Sampled.Agrees(count, finishes.Select(finish => (finish - count) * (finish - count)));
        foreach (var share in new[] { 0.05, 0.5, 0.95, 0.999 })
        {
            var limit = Gamma.InvCDF(count, 1, share);
            Sampled.Agrees(share, finishes.Select(finish => finish <= limit ? 1.0 : 0));
        }
    }

    [Theory]
    [InlineData(2)]
    [InlineData(5)]
    [InlineData(20)]
    public void Greatest_of_uniforms_is_n_of_n_plus_1(int count) =>
        Sampled.Agrees(count / (count + 1.0), Sample(SideBySide(count, new AnyCurve(u => Unit * u))));

    [Fact]
    public void Normals_in_a_row_are_normal()
    {
        var finishes = Sample(InARow(16, new AnyCurve(u => Normal.InvCDF(2 * Unit, Unit / 4, u)))).ToList();
        Sampled.Agrees(32, finishes);
        Sampled.Agrees(1, finishes.Select(finish => Math.Pow(finish - 32, 2)));
        foreach (var z in new[] { -2, -1, 0, 1, 2, 3 })
            Sampled.Agrees(Normal.CDF(0, 1, z), finishes.Select(finish => finish <= 32 + z ? 1.0 : 0));
    }

    /// <summary>Greater of two normals: mean + deviation / √π (C. E. Clark, The greatest of a finite
    /// set of random variables, 1961).</summary>
    [Fact]
    public void Greater_of_two_normals_is_Clarks() =>
        Sampled.Agrees(5 + 1 / Math.Sqrt(Math.PI), Sample(SideBySide(2, new AnyCurve(u => Normal.InvCDF(5 * Unit, Unit, u)))));

    /// <summary>Log-normal with median 4 whose ninth tenth lies at 10: mean 5.164955, deviation
    /// 4.219164, and these quantiles (SciPy).</summary>
    [Fact]
    public void Long_tail_is_log_normal()
    {
        var finishes = Sample(new Net().Add("long", new LongTail(4 * Unit, 0.714985457))).ToList();
        Sampled.Agrees(5.164955, finishes);
        Sampled.Agrees(4.219164 * 4.219164, finishes.Select(finish => Math.Pow(finish - 5.164955, 2)));
        foreach (var (share, limit) in new[] { (0.5, 4.0), (0.8, 7.301219), (0.9, 10), (0.95, 12.966133), (1 - 0.166159, 8) })
            Sampled.Agrees(share, finishes.Select(finish => finish <= limit ? 1.0 : 0));
    }

    /// <summary>PERT beta of 2, 4, 12: mean 5, variance 3, and these quantiles (SciPy).</summary>
    [Fact]
    public void Three_points_make_a_beta()
    {
        var finishes = Sample(new Net().Add("three", new ThreePoint(2 * Unit, 4 * Unit, 12 * Unit))).ToList();
        Sampled.Agrees(5, finishes);
        Sampled.Agrees(3, finishes.Select(finish => Math.Pow(finish - 5, 2)));
        foreach (var (share, limit) in new[] { (0.1, 2.899021), (0.5, 4.766723), (0.8, 6.502586), (0.9, 7.453341), (0.95, 8.212767) })
            Sampled.Agrees(share, finishes.Select(finish => finish <= limit ? 1.0 : 0));
    }

    [Fact]
    public void What_happens_perhaps_happens_so_often()
    {
        var finishes = Sample(new Net().Add("rust", new Perhaps(0.3, new ThreePoint(2 * Unit, 4 * Unit, 12 * Unit)))).ToList();
        Sampled.Agrees(0.3, finishes.Select(finish => finish > 0 ? 1.0 : 0));
        Sampled.Agrees(5, finishes.Where(finish => finish > 0));
        Sampled.Agrees(0.8, finishes.Where(finish => finish > 0).Select(finish => finish <= 6.502586 ? 1.0 : 0));
    }
}
