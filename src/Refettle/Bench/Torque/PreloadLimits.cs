using Refettle.Bench.Threads;

namespace Refettle.Bench.Torque;

/// <summary>The least and most clamp load of a joint of several bolts.</summary>
public static class PreloadLimits
{
    private static readonly Input<double> Tolerance =
        Inputs.Quantity("tolerance", "half the torque band: 2 for 48 ± 2 N·m", Units.NewtonMetre, 0, 500);
    private static readonly Input<int> Bolts = Inputs.Count("bolts", "bolts that share the load", 1, 100).Or("1", "the single bolt");

    public static BenchNumber Number { get; } = new()
    {
        Name = "preload-limits",
        Says = "Least and most clamp load from a torque band, scatter and number of bolts",
        Room = "Torque",
        Formula = "P max = (1 + Γ) T max / (K d); P min = (1 − Γ/√n) T min / (K d)",
        Source = "NASA-STD-5020B eqs. 3 to 5, 25, 26",
        Uncertainty = "Γ/√n holds for joints that do not fail when one bolt gapes; use one bolt where it does. 2 to 10 % is lost soon after tightening (NSTS 08307A 3.6).",
        Inputs = [Preload.Torque, Tolerance, ThreadInputs.Thread, NutFactor.Input, Scatter.Input, Bolts],
        Example = "torque=48Nm tolerance=2Nm thread=M10 bolts=5",
        Work = Work,
    };

    /// <summary>P max in N; scatter Γ 0 to below 1.</summary>
    public static double MostNewtons(double mostTorqueNewtonMetres, double nutFactor, double diameterMillimetres, double scatter) =>
        (1 + scatter) * NutFactor.PreloadNewtons(mostTorqueNewtonMetres, nutFactor, diameterMillimetres);

    /// <summary>P min in N, mean of n bolts.</summary>
    public static double LeastNewtons(
        double leastTorqueNewtonMetres, double nutFactor, double diameterMillimetres, double scatter, int bolts) =>
        (1 - scatter / Math.Sqrt(bolts)) * NutFactor.PreloadNewtons(leastTorqueNewtonMetres, nutFactor, diameterMillimetres);

    private static Result<Outcome> Work(Given given)
    {
        var (torque, tolerance) = (given.Of(Preload.Torque), given.Of(Tolerance));
        if (tolerance >= torque)
            return Outcome.Refuse("tolerance", "it is as large as the torque", "Give half the band, less than the torque");
        var (factor, diameter) = (given.Of(NutFactor.Input), given.Of(ThreadInputs.Thread).DiameterMillimetres);
        var scatter = Scatter.Share(given.Of(Scatter.Input));
        return Outcome.Of(
            new("nominal preload", NutFactor.PreloadNewtons(torque, factor, diameter), Units.Newton),
            new("most", MostNewtons(torque + tolerance, factor, diameter, scatter), Units.Newton),
            new("least", LeastNewtons(torque - tolerance, factor, diameter, scatter, given.Of(Bolts)), Units.Newton));
    }
}
