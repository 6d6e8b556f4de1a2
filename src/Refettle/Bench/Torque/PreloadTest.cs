using Refettle.Bench.Threads;

namespace Refettle.Bench.Torque;

/// <summary>Nut factor and scatter from bolts that were tightened to one torque and measured.</summary>
public static class PreloadTest
{
    /// <summary>Two-sided tolerance factors, 90 % of the population at 95 % confidence (NASA-STD-5020B table 5).</summary>
    private static readonly (int Count, double Factor)[] ToleranceFactors =
        [(5, 4.291), (10, 2.856), (15, 2.492), (20, 2.319), (30, 2.145), (50, 1.999), (100, 1.875)];

    private static readonly Input<ValueList<double>> Loads =
        Inputs.List("preloads", "clamp loads measured at that torque", Units.Newton, 10, 2_000_000, 5, 1000);

    public static BenchNumber Number { get; } = new()
    {
        Name = "preload-test",
        Says = "Nut factor and scatter from measured clamp loads",
        Room = "Torque",
        Formula = "K = T / (d · mean F); Γ max = max/mean − 1; Γ min = 1 − min/mean; Γ 90/95 = s · σ / mean, s from the table for the sample size",
        Source = "NASA-STD-5020B eqs. 24, 31 to 36, table 5, worked example A.2",
        Uncertainty = "Between the sizes of the table the smaller size's factor is used, which errs on the wide side.",
        Inputs = [Preload.Torque, ThreadInputs.Thread, Loads],
        Example = "torque=60Nm thread=M10 preloads=30100,28400,33000,25800,29500N",
        Work = Work,
    };

    /// <summary>The table's factor for the largest size not above this one. Count 5 or more.</summary>
    public static double ToleranceFactor(int count) => ToleranceFactors.Last(row => row.Count <= count).Factor;

    /// <summary>Mean, sample deviation and tolerance share of a sample of 5 or more loads.</summary>
    public static (double Mean, double Deviation, double ToleranceShare) Of(ValueList<double> loads)
    {
        var mean = loads.Average();
        var deviation = Math.Sqrt(loads.Sum(load => (load - mean) * (load - mean)) / (loads.Count - 1));
        return (mean, deviation, ToleranceFactor(loads.Count) * deviation / mean);
    }

    private static Result<Outcome> Work(Given given)
    {
        var loads = given.Of(Loads);
        var (mean, deviation, share) = Of(loads);
        var diameter = given.Of(ThreadInputs.Thread).DiameterMillimetres;
        return Outcome.Of(
            new("mean", mean, Units.Newton),
            new("standard deviation", deviation, Units.Newton),
            new("nut factor K", given.Of(Preload.Torque) * 1000 / (diameter * mean), Units.One),
            new("Γ max", (loads.Max() / mean - 1) * 100, Units.Percent),
            new("Γ min", (1 - loads.Min() / mean) * 100, Units.Percent),
            new("Γ 90/95", share * 100, Units.Percent));
    }
}
