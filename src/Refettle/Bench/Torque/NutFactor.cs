namespace Refettle.Bench.Torque;

/// <summary>The short form T = K d F: one factor K for thread and head friction together.</summary>
public static class NutFactor
{
    public const string Source = "NASA-STD-5020B eq. 24 (T = K d F); K by surface from Shigley table 8-15";

    /// <summary>K by surface, as printed in Shigley table 8-15; 0.20 is its value for when nothing is known.</summary>
    public static ValueList<Surface> Surfaces { get; } =
    [
        new("black", 0.30), new("zinc", 0.20), new("lubricated", 0.18), new("cadmium", 0.16), new("anti-seize", 0.12), new("unknown", 0.20),
    ];

    private static readonly Input<string> SurfaceInput =
        Inputs.Choice("surface", "surface of the thread", Surfaces.Select(row => row.Name).ToValueList());

    public static Input<double> Input { get; } =
        Inputs.Quantity("k", "nut factor K; ask nut-factor for one by surface", Units.One, 0.05, 0.6)
        .Or("0.20", "Shigley's value when nothing is known");

    public static BenchNumber Number { get; } = new()
    {
        Name = "nut-factor",
        Says = "Nut factor K by surface",
        Room = "Torque",
        Formula = "T = K · d · F",
        Source = Source + "; range of tested lubricants from a handbook of bolted joints",
        Uncertainty = "Over tested lubricants mean K ran from 0.086 to 0.52; NASA TM-106943 gives 0.11 to 0.15 lubricated, about 0.2 dry.",
        Inputs = [SurfaceInput],
        Example = "surface=anti-seize",
        Work = given => Outcome.Of(new BenchValue("K", Of(given.Of(SurfaceInput)), Units.One)),
    };

    /// <summary>K of a surface of <see cref="Surfaces"/>.</summary>
    public static double Of(string surface) => Surfaces.Single(row => row.Name == surface).NutFactor;

    /// <summary>Torque in N·m for a preload in N.</summary>
    public static double TorqueNewtonMetres(double preloadNewtons, double nutFactor, double diameterMillimetres) =>
        nutFactor * diameterMillimetres * preloadNewtons / 1000;

    /// <summary>Preload in N that a torque in N·m gives.</summary>
    public static double PreloadNewtons(double torqueNewtonMetres, double nutFactor, double diameterMillimetres) =>
        torqueNewtonMetres * 1000 / (nutFactor * diameterMillimetres);
}

/// <summary>A surface and its nut factor.</summary>
public sealed record Surface(string Name, double NutFactor);
