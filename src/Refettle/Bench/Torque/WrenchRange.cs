namespace Refettle.Bench.Torque;

/// <summary>Whether a torque wrench suits a torque.</summary>
public static class WrenchRange
{
    private static readonly Input<double> Least = Inputs.Quantity("from", "lowest mark of the wrench", Units.NewtonMetre, 0.1, 2000);
    private static readonly Input<double> Most = Inputs.Quantity("to", "highest mark of the wrench", Units.NewtonMetre, 0.1, 3000);

    public static BenchNumber Number { get; } = new()
    {
        Name = "wrench-range",
        Says = "Whether a torque wrench suits a torque, and what its deviation is worth",
        Room = "Torque",
        Formula = "from ≤ T ≤ to; deviation ±4 % above 10 N·m, ±6 % up to 10 N·m; standard uncertainty = deviation / √3",
        Source = "ISO 6789 permissible deviations, from memory. Below 20 % of the highest mark: common practice, no source",
        Uncertainty = "Holds for a wrench calibrated within a year or 5 000 uses (from memory). A dropped or unknown one may be anywhere.",
        Inputs = [Preload.Torque, Least, Most],
        Example = "torque=48Nm from=20Nm to=100Nm",
        Work = Work,
    };

    /// <summary>Permissible deviation as a share of the reading (ISO 6789, from memory).</summary>
    public static double DeviationShare(double torqueNewtonMetres) => torqueNewtonMetres > 10 ? 0.04 : 0.06;

    /// <summary>Standard uncertainty of a deviation that is spread evenly over ± its value.</summary>
    public static double StandardUncertainty(double halfWidth) => halfWidth / Math.Sqrt(3);

    private static Result<Outcome> Work(Given given)
    {
        var (torque, least, most) = (given.Of(Preload.Torque), given.Of(Least), given.Of(Most));
        if (least >= most)
            return Outcome.Refuse("from", "the lowest mark is not below the highest", "Exchange from and to");
        var deviation = torque * DeviationShare(torque);
        var fits = torque >= least && torque <= most;
        return Outcome.Judged(
            [new("torque", torque, Units.NewtonMetre, torque - deviation, torque + deviation),
                new("standard uncertainty", StandardUncertainty(deviation), Units.NewtonMetre)],
            fits ? "suits" : "does not suit",
            fits ? null : "Outside the wrench's marks: take another wrench.",
            fits && torque < most / 5 ? "In the lowest fifth of the wrench, where many are poor: take a smaller one." : null);
    }
}
