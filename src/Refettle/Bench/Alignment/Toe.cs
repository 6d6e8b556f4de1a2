namespace Refettle.Bench.Alignment;

/// <summary>Toe as a length across a rim and as an angle. Toe-in is positive.</summary>
public static class Toe
{
    private static readonly Input<double> Length =
        Inputs.Quantity("toe", "front less rear distance, toe-in positive", Units.Millimetre, -100, 100);
    private static readonly Input<double> Angle = Inputs.Quantity("toe", "toe angle, toe-in positive", Units.Degree, -10, 10);
    private static readonly Input<double> Across =
        Inputs.Quantity("diameter", "diameter of the circle measured at: rim or tyre, say which", Units.Millimetre, 100, 1200);
    private static readonly Input<string> Of = Inputs.Choice("of", "what the figure is for", "wheel", "axle");

    public static BenchNumber ToAngle { get; } = new()
    {
        Name = "toe-angle",
        Says = "Toe in mm turned into degrees",
        Room = "Alignment",
        Formula = "per wheel sin δ = s / D; total toe of the axle is the sum of both wheels",
        Source = "Geometry; signs after ISO 8855:2011 7.1.6 and 7.1.7",
        Uncertainty = "A tape is good to 1 mm, which is 0.15° on a 15-inch circle. Measure at the rim on marks and roll the car half a turn to take out run-out.",
        Inputs = [Length, Across, Of],
        Example = "toe=2mm diameter=381mm of=wheel",
        Work = WorkAngle,
    };

    public static BenchNumber ToLength { get; } = new()
    {
        Name = "toe-length",
        Says = "Toe in degrees turned into mm",
        Room = "Alignment",
        Formula = "per wheel s = D sin δ",
        Source = "Geometry; signs after ISO 8855:2011 7.1.6 and 7.1.7",
        Uncertainty = "Exact; the diameter must be the one that is measured at.",
        Inputs = [Angle, Across, Of],
        Example = "toe=0.25deg diameter=16in of=wheel",
        Work = WorkLength,
    };

    /// <summary>Toe of one wheel in degrees. Length at most the diameter.</summary>
    public static double Degrees(double millimetres, double diameterMillimetres) =>
        Math.Asin(millimetres / diameterMillimetres) * 180 / Math.PI;

    /// <summary>Toe of one wheel in mm across the diameter.</summary>
    public static double Millimetres(double degrees, double diameterMillimetres) => diameterMillimetres * Math.Sin(degrees * Math.PI / 180);

    private static Result<Outcome> WorkAngle(Given given)
    {
        var perWheel = Degrees(given.Of(Length) / Wheels(given), given.Of(Across));
        return Outcome.Of(new("per wheel", perWheel, Units.Degree), new("axle, both alike", 2 * perWheel, Units.Degree));
    }

    private static Result<Outcome> WorkLength(Given given)
    {
        var perWheel = Millimetres(given.Of(Angle) / Wheels(given), given.Of(Across));
        return Outcome.Of(new("per wheel", perWheel, Units.Millimetre), new("axle, both alike", 2 * perWheel, Units.Millimetre));
    }

    private static int Wheels(Given given) => given.Of(Of) == "axle" ? 2 : 1;
}
