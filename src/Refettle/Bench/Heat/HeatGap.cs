namespace Refettle.Bench.Heat;

/// <summary>How much a hole opens when it is heated.</summary>
public static class HeatGap
{
    private static readonly Input<double> Diameter = Inputs.Quantity("diameter", "diameter where they meet", Units.Millimetre, 1, 500);
    private static readonly Input<double> OuterRise =
        Inputs.Quantity("outer-rise", "temperature rise of the outer part", Units.KelvinStep, 0, 1000);
    private static readonly Input<double> InnerRise = Inputs.Quantity("inner-rise", "temperature rise of the inner part", Units.KelvinStep,
        0, 1000).Or("0 K", "the inner part stays cold");
    private static readonly Input<string> Outer = Inputs.Choice("outer", "metal of the outer part", "steel", "aluminium")
        .Or("steel", "usual");
    private static readonly Input<string> Inner = Inputs.Choice("inner", "metal of the inner part", "steel", "aluminium")
        .Or("steel", "usual");

    public static BenchNumber Number { get; } = new()
    {
        Name = "heat-gap",
        Says = "Gap that heat opens between a nut and its bolt",
        Room = "Heat",
        Formula = "gap = d (αo ΔTo − αi ΔTi)",
        Source = "Thermal expansion: steel 11.7, aluminium 23.1 millionths per K, handbook values from memory",
        Uncertainty = "On the diameter, for even heating. Rust fills the gap; the jolt of warming helps as much as the gap.",
        Inputs = [Diameter, OuterRise, InnerRise, Outer, Inner],
        Example = "diameter=10mm outer-rise=200K",
        Work = Work,
    };

    /// <summary>Gap on the diameter in mm; negative where the inner part grows more.</summary>
    public static double Millimetres(
        double diameterMillimetres, double outerPerKelvin, double outerRiseKelvin, double innerPerKelvin, double innerRiseKelvin) =>
        diameterMillimetres * (outerPerKelvin * outerRiseKelvin - innerPerKelvin * innerRiseKelvin);

    private static Result<Outcome> Work(Given given)
    {
        var gap = Millimetres(
            given.Of(Diameter), PerKelvin(given.Of(Outer)), given.Of(OuterRise), PerKelvin(given.Of(Inner)), given.Of(InnerRise));
        return Outcome.Judged([new("gap on the diameter", gap, Units.Millimetre)], gap <= 0 ? "tighter" : null,
            "Flame only with fuel, fluid-filled brake lines and airbags off and rubber and plastic shielded; fumes of plating and oil: air. A heated class 8.8 or stronger bolt may be scrap: see tempering.");
    }

    private static double PerKelvin(string metal) => metal == "steel" ? 11.7e-6 : 23.1e-6;
}
