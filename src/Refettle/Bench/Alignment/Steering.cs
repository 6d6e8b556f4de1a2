namespace Refettle.Bench.Alignment;

/// <summary>Caster, included angle and setback. Camber is positive with the top of the wheel outward.</summary>
public static class Steering
{
    private static readonly Input<double> Difference =
        Inputs.Quantity("camber-difference", "camber at one lock less camber at the other", Units.Degree, -10, 10);
    private static readonly Input<double> Steer = Inputs.Quantity("steer", "angle the wheel is turned to each side", Units.Degree, 5, 30);
    private static readonly Input<double> Inclination =
        Inputs.Quantity("inclination", "steering axis inclination (SAI), top inward positive", Units.Degree, 0, 30);
    private static readonly Input<double> Camber = Inputs.Quantity("camber", "camber, top outward positive", Units.Degree, -15, 15);
    private static readonly Input<double> Offset =
        Inputs.Quantity("offset", "how far one wheel stands behind the other", Units.Millimetre, 0, 200);
    private static readonly Input<double> Track = Inputs.Quantity("track", "track width", Units.Millimetre, 500, 3000);

    public static BenchNumber Caster { get; } = new()
    {
        Name = "caster",
        Says = "Caster from camber at both locks",
        Room = "Alignment",
        Formula = "caster = Δcamber / (2 sin steer)",
        Source = "Geometry of the inclined steering axis, small angles",
        Uncertainty = "The shorter form is 0.2 % low at 20°; a bubble gauge is good to 0.25° (assumed). Needs turn plates and brakes held.",
        Inputs = [Difference, Steer],
        Example = "camber-difference=4.1deg steer=20deg",
        Work = WorkCaster,
    };

    public static BenchNumber Included { get; } = new()
    {
        Name = "included-angle",
        Says = "Included angle: steering axis inclination and camber together",
        Room = "Alignment",
        Formula = "included = SAI + camber",
        Source = "Definition of the trade",
        Uncertainty = "The errors of both readings add. Different left and right by more than a degree: look for a bent part (common practice, no source).",
        Inputs = [Inclination, Camber],
        Example = "inclination=12.5deg camber=-0.75deg",
        Work = given => Outcome.Of(new BenchValue("included angle", given.Of(Inclination) + given.Of(Camber), Units.Degree)),
    };

    public static BenchNumber Setback { get; } = new()
    {
        Name = "setback",
        Says = "Setback of an axle as an angle",
        Room = "Alignment",
        Formula = "angle = atan(offset / track)",
        Source = "Geometry",
        Uncertainty = "1 mm is 0.04° on 1.5 m.",
        Inputs = [Offset, Track],
        Example = "offset=5mm track=1500mm",
        Work = given => Outcome.Of(new BenchValue("setback", SetbackDegrees(given.Of(Offset), given.Of(Track)), Units.Degree)),
    };

    /// <summary>Small-angle form; steer more than 0.</summary>
    public static double CasterDegrees(double camberDifferenceDegrees, double steerDegrees) =>
        camberDifferenceDegrees / (2 * Math.Sin(Radians(steerDegrees)));

    /// <summary>The same with the arcsine; for caster up to 90°.</summary>
    public static double CasterArcsineDegrees(double camberDifferenceDegrees, double steerDegrees) =>
        Math.Asin(Radians(camberDifferenceDegrees) / (2 * Math.Sin(Radians(steerDegrees)))) * 180 / Math.PI;

    public static double SetbackDegrees(double offsetMillimetres, double trackMillimetres) =>
        Math.Atan(offsetMillimetres / trackMillimetres) * 180 / Math.PI;

    private static Result<Outcome> WorkCaster(Given given)
    {
        var (difference, steer) = (given.Of(Difference), given.Of(Steer));
        var caster = CasterDegrees(difference, steer);
        return Math.Abs(caster) <= 30
            ? Outcome.Of(new("caster", caster, Units.Degree),
                new("caster, with arcsine", CasterArcsineDegrees(difference, steer), Units.Degree))
            : Outcome.Refuse("camber-difference", $"it would mean {Measure.Figure(caster)}° of caster",
                "Read camber and steer angle again; no car has more than 30°");
    }

    private static double Radians(double degrees) => degrees * Math.PI / 180;
}
