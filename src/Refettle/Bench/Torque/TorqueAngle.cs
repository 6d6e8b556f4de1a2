using Refettle.Bench.Threads;

namespace Refettle.Bench.Torque;

/// <summary>What a turn of the nut adds while everything stays elastic.</summary>
public static class TorqueAngle
{
    private static readonly Input<double> Angle = Inputs.Quantity("angle", "turn after the joint is snug", Units.Degree, 1, 360);
    private static readonly Input<double> Shank = Inputs.Quantity("shank", "plain shank within the grip", Units.Millimetre, 0, 500);
    private static readonly Input<double> Threaded = Inputs.Quantity("threaded", "free thread within the grip", Units.Millimetre, 0, 500);
    private static readonly Input<double> Modulus = Inputs.Quantity("modulus", "elastic modulus of the bolt", Units.Gigapascal, 50, 250)
        .Or("205 GPa", "steel");
    private static readonly Input<double> Members = Inputs.Quantity("members", "compliance of the clamped parts over that of the bolt",
        Units.One, 0, 5).Or("0.25", "assumed: stiff steel parts");

    public static BenchNumber Number { get; } = new()
    {
        Name = "torque-angle",
        Says = "Clamp load that a turn adds, and whether it passes yield",
        Room = "Torque",
        Formula = "F = θ/360 · P / (δs + δp); δs = Lshank/(E A) + Lthread/(E As); δp = ratio · δs",
        Source = "Elastic springs in series",
        Uncertainty = "An upper bound: seating, head and nut give too, and beyond yield the load hardly rises any more.",
        Inputs = [Angle, ThreadInputs.Thread, ThreadInputs.Class, Shank, Threaded, Modulus, Members],
        Example = "angle=30deg thread=M10 class=8.8 shank=20mm threaded=20mm",
        Work = Work,
    };

    /// <summary>δs in mm/N.</summary>
    public static double BoltComplianceMillimetresPerNewton(
        ScrewThread thread, double shankMillimetres, double threadedMillimetres, double modulusMegapascals)
    {
        var shankArea = Math.PI / 4 * thread.DiameterMillimetres * thread.DiameterMillimetres;
        return (shankMillimetres / shankArea + threadedMillimetres / thread.StressAreaSquareMillimetres) / modulusMegapascals;
    }

    /// <summary>Load in N that a turn adds to springs of this total compliance.</summary>
    public static double AddedNewtons(double angleDegrees, double pitchMillimetres, double complianceMillimetresPerNewton) =>
        angleDegrees / 360 * pitchMillimetres / complianceMillimetresPerNewton;

    private static Result<Outcome> Work(Given given)
    {
        var thread = given.Of(ThreadInputs.Thread);
        var grade = FastenerClass.Read("class", given.Of(ThreadInputs.Class), thread);
        if (!grade.IsGood)
            return Result<Outcome>.Bad(grade.Faults);
        if (given.Of(Shank) + given.Of(Threaded) < 1)
            return Outcome.Refuse("threaded", "the grip is shorter than 1 mm", "Give the lengths of shank and free thread within the grip");
        var bolt = BoltComplianceMillimetresPerNewton(thread, given.Of(Shank), given.Of(Threaded), given.Of(Modulus) * 1000);
        var added = AddedNewtons(given.Of(Angle), thread.PitchMillimetres, bolt * (1 + given.Of(Members)));
        var yields = Strength.LoadNewtons(thread, grade.Value.YieldMegapascals);
        return Outcome.Judged(
            [new("added load, if elastic", added, Units.Newton), new("yield load", yields, Units.Newton)],
            added > yields ? "past yield" : "elastic",
            added > yields ? "A turn past yield makes the bolt single-use unless the maker says otherwise." : null);
    }
}
