namespace Refettle.Bench.Torque;

/// <summary>What is left for clamping when the nut itself drags.</summary>
public static class RunningTorque
{
    private static readonly Input<double> Tolerance = Inputs.Quantity("tolerance", "half the torque band", Units.NewtonMetre, 0, 500);
    private static readonly Input<double> Least =
        Inputs.Quantity("least-drag", "least torque to keep the nut turning before it seats", Units.NewtonMetre, 0, 500);
    private static readonly Input<double> Most = Inputs.Quantity("most-drag", "most torque to keep it turning", Units.NewtonMetre, 0, 500);
    private static readonly Input<string> Stated = Inputs.Choice("stated", "how the torque is stated", "total", "above-running")
        .Or("total", "the reading of the wrench");

    public static BenchNumber Number { get; } = new()
    {
        Name = "running-torque",
        Says = "Torque that clamps when a locking nut drags",
        Room = "Torque",
        Formula = "T max = (T + t) − least drag; T min = (T − t) − most drag; stated above running torque: T ± t as it is",
        Source = "NASA-STD-5020B eqs. 27 to 30; prevailing torque is measured while fitting (table 4)",
        Uncertainty = "As good as the measured drag. Nylon-insert nuts drag less at each use: new ones are common practice.",
        Inputs = [Preload.Torque, Tolerance, Least, Most, Stated],
        Example = "torque=40Nm tolerance=2Nm least-drag=0.85Nm most-drag=6Nm",
        Work = Work,
    };

    private static Result<Outcome> Work(Given given)
    {
        var (torque, tolerance) = (given.Of(Preload.Torque), given.Of(Tolerance));
        var (least, most) = given.Of(Stated) == "total" ? (given.Of(Least), given.Of(Most)) : (0, 0);
        if (given.Of(Least) > given.Of(Most))
            return Outcome.Refuse("least-drag", "it is more than most-drag", "Exchange the two");
        return torque - tolerance - most > 0
            ? Outcome.Of(
                new("most clamping torque", torque + tolerance - least, Units.NewtonMetre),
                new("least clamping torque", torque - tolerance - most, Units.NewtonMetre))
            : Outcome.Refuse("most-drag", "the drag uses up the whole torque, nothing is left to clamp",
                "Take another nut, or clean the thread and measure again");
    }
}
