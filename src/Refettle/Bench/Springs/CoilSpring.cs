namespace Refettle.Bench.Springs;

/// <summary>Rate of a coil spring, what rust takes from it, and what it stores.</summary>
public static class CoilSpring
{
    private static readonly Input<double> Wire = Inputs.Quantity("wire", "wire diameter", Units.Millimetre, 0.1, 50);
    private static readonly Input<double> Coil =
        Inputs.Quantity("coil", "mean coil diameter: outside less one wire", Units.Millimetre, 1, 500);
    private static readonly Input<double> Active = Inputs.Quantity("active-coils", "coils that move", Units.One, 1, 60);
    private static readonly Input<double> Modulus = Inputs.Quantity("modulus", "shear modulus of the wire", Units.Gigapascal, 20, 100)
        .Or("79.3 GPa", "spring steel");
    private static readonly Input<double> Loss =
        Inputs.Quantity("wire-loss", "share of the wire's diameter lost to rust", Units.Percent, 0, 50);
    private static readonly Input<double> Rate = Inputs.Quantity("rate", "spring rate", Units.NewtonPerMillimetre, 0.01, 1000);
    private static readonly Input<double> Travel = Inputs.Quantity("travel", "compression", Units.Millimetre, 0, 1000);

    public static BenchNumber RateNumber { get; } = new()
    {
        Name = "spring-rate",
        Says = "Rate of a coil spring from its dimensions",
        Room = "Springs",
        Formula = "k = G d⁴ / (8 D³ Na)",
        Source = "Shigley, helical springs",
        Uncertainty = "The range is ±2 % on the wire (assumed), which is ±8 % on the rate; active coils are hard to count to a quarter.",
        Inputs = [Wire, Coil, Active, Modulus],
        Example = "wire=13mm coil=120mm active-coils=6",
        Work = WorkRate,
    };

    public static BenchNumber LostNumber { get; } = new()
    {
        Name = "rate-lost",
        Says = "Spring rate lost to rust",
        Room = "Springs",
        Formula = "lost = 1 − (1 − x)⁴",
        Source = "Rate goes with the fourth power of the wire diameter (Shigley)",
        Uncertainty = "For even loss all along. Pits matter more: they start cracks. A pitted spring is scrap whatever its rate.",
        Inputs = [Loss],
        Example = "wire-loss=5%",
        Work = given => Outcome.Of(new BenchValue("rate lost", 100 * LostShare(given.Of(Loss) / 100), Units.Percent)),
    };

    public static BenchNumber EnergyNumber { get; } = new()
    {
        Name = "spring-energy",
        Says = "Energy that a compressed spring holds",
        Room = "Springs",
        Formula = "E = k x² / 2",
        Source = "Linear spring",
        Uncertainty = "As good as rate and travel.",
        Inputs = [Rate, Travel],
        Example = "rate=27.3N/mm travel=150mm",
        Work = WorkEnergy,
    };

    /// <summary>Rate in N/mm.</summary>
    public static double RateNewtonsPerMillimetre(
        double wireMillimetres, double coilMillimetres, double activeCoils, double modulusMegapascals) =>
        modulusMegapascals * Math.Pow(wireMillimetres, 4) / (8 * Math.Pow(coilMillimetres, 3) * activeCoils);

    /// <summary>Share of the rate lost, 0 to 1, when this share of the wire's diameter is lost.</summary>
    public static double LostShare(double wireLostShare) => 1 - Math.Pow(1 - wireLostShare, 4);

    /// <summary>Energy in J of a spring of this rate in N/mm.</summary>
    public static double EnergyJoules(double rateNewtonsPerMillimetre, double travelMillimetres) =>
        rateNewtonsPerMillimetre * travelMillimetres * travelMillimetres / 2 / 1000;

    private static Result<Outcome> WorkRate(Given given)
    {
        var (wire, coil) = (given.Of(Wire), given.Of(Coil));
        if (coil < 2 * wire)
            return Outcome.Refuse("coil", "the coil is less than two wires across", "Give the mean diameter: outside less one wire");
        var rate = RateNewtonsPerMillimetre(wire, coil, given.Of(Active), given.Of(Modulus) * 1000);
        return Outcome.Of(new BenchValue("rate", rate, Units.NewtonPerMillimetre, rate * Math.Pow(0.98, 4), rate * Math.Pow(1.02, 4)));
    }

    private static Result<Outcome> WorkEnergy(Given given)
    {
        var (rate, travel) = (given.Of(Rate), given.Of(Travel));
        return Outcome.Judged([new("energy", EnergyJoules(rate, travel), Units.Joule), new("force", rate * travel, Units.Newton)],
            verdict: null,
            "A sprung load kills. Rated compressor, inspected, no impact gun, stay out of its line; the maker's manual first.");
    }
}
