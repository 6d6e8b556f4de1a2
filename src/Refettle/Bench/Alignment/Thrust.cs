namespace Refettle.Bench.Alignment;

/// <summary>Where the rear axle steers. Side and size are kept apart, because the sign of a thrust angle
/// is not defined alike everywhere.</summary>
/// <param name="To">The side that the thrust line points to.</param>
/// <param name="Degrees">0 or more.</param>
public readonly record struct ThrustLine(Side To, double Degrees);

/// <summary>Thrust line and total toe of the rear wheels.</summary>
public static class Thrust
{
    private static readonly Input<double> Left =
        Inputs.Quantity("left", "toe of the left rear wheel, toe-in positive", Units.Degree, -10, 10);
    private static readonly Input<double> Right =
        Inputs.Quantity("right", "toe of the right rear wheel, toe-in positive", Units.Degree, -10, 10);

    public static BenchNumber Number { get; } = new()
    {
        Name = "thrust",
        Says = "Thrust line of the rear wheels, with its side",
        Room = "Alignment",
        Formula = "|left − right| / 2, to the right when the left wheel toes in more; total = left + right",
        Source = "Geometry: toe-in of the left wheel turns it to the right. Makers differ in the sign: one data sheet prints (right − left)/2",
        Uncertainty = "Half the error of the two readings together.",
        Inputs = [Left, Right],
        Example = "left=0.20deg right=0deg",
        Work = Work,
    };

    /// <summary>The thrust line for toe angles in degrees, toe-in positive.</summary>
    public static ThrustLine Of(double leftDegrees, double rightDegrees)
    {
        var half = (leftDegrees - rightDegrees) / 2;
        return new(half > 0 ? Side.Right : half < 0 ? Side.Left : Side.None, Math.Abs(half));
    }

    private static Result<Outcome> Work(Given given)
    {
        var (left, right) = (given.Of(Left), given.Of(Right));
        var line = Of(left, right);
        return Outcome.Judged(
            [new("thrust line off straight ahead", line.Degrees, Units.Degree), new("total toe", left + right, Units.Degree)],
            line.To switch { Side.Right => "to the right", Side.Left => "to the left", _ => "straight ahead" });
    }
}
