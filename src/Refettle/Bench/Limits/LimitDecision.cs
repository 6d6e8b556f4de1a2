using MathNet.Numerics.Distributions;

namespace Refettle.Bench.Limits;

/// <summary>What a reading near a limit allows one to say.</summary>
public enum Decision
{
    /// <summary>Within the limit by more than the guard band.</summary>
    Pass,

    /// <summary>Within the limit, by less than the guard band.</summary>
    ConditionalPass,

    /// <summary>Beyond the limit, by less than the guard band.</summary>
    ConditionalFail,

    /// <summary>Beyond the limit by more than the guard band.</summary>
    Fail,
}

/// <summary>A decision at a limit with a guard band, so that a reading too near the limit is not sold as a pass.</summary>
public static class LimitDecision
{
    private static readonly Input<Measure> Expanded = Inputs.Any("uncertainty", "expanded uncertainty U of the measurement (two sigma)");
    private static readonly Input<double> Guard = Inputs.Quantity("guard", "guard band as a multiple r of U", Units.One, 0, 3)
        .Or("1", "ILAC-G8, below 2.5 % false passes");

    public static BenchNumber Number { get; } = new()
    {
        Name = "limit-decision",
        Says = "Decision at a limit, given the measurement's uncertainty",
        Room = "Limits",
        Formula = "w = r U; pass up to limit − w, conditional pass up to the limit, conditional fail up to limit + w, then fail; false passes ≤ Φ(−2 r)",
        Source = "ILAC-G8:09/2019 4.2.3; r = 0.83 is the default of ISO 14253-1:2017",
        Uncertainty = "Holds for a normal spread and k = 2. Who must prove that it conforms carries the uncertainty (ISO 14253-1).",
        Inputs = [Conformity.Value, Expanded, Conformity.Lower, Conformity.Upper, Guard],
        Example = "value=0.45mm uncertainty=0.05mm upper=0.5mm",
        Work = Work,
    };

    /// <summary>The decision for a value and a band whose ends may be infinite; guard 0 or more, all of one unit.</summary>
    public static Decision Of(double value, double lower, double upper, double guard)
    {
        var inside = Math.Min(value - lower, upper - value);
        return inside >= guard
            ? Decision.Pass
            : inside >= 0
            ? Decision.ConditionalPass
            : inside >= -guard
            ? Decision.ConditionalFail
            : Decision.Fail;
    }

    /// <summary>The greatest chance that a value at the acceptance limit is beyond the tolerance, one-sided, k = 2.</summary>
    public static double FalsePassProbability(double guardMultiple) => Normal.CDF(0, 1, -2 * guardMultiple);

    private static Result<Outcome> Work(Given given)
    {
        var value = given.Of(Conformity.Value);
        var (band, spread) = (Conformity.Band(given, value.Unit), Conformity.Spread(given, Expanded, value.Unit));
        if (!band.IsGood || !spread.IsGood)
            return Result<Outcome>.Bad(band.Faults.Concat(spread.Faults));
        var (lower, upper) = band.Value;
        var guard = given.Of(Guard) * spread.Value;
        if (upper - lower < 2 * guard)
            return Outcome.Refuse("uncertainty", "the guard bands meet: this measurement cannot pass anything",
                "Measure better, or take a smaller guard");
        var values = new[] { ("lowest pass", lower + guard), ("highest pass", upper - guard) }
            .Where(pair => double.IsFinite(pair.Item2)).Select(pair => new BenchValue(pair.Item1, pair.Item2, value.Unit));
        return Outcome.Judged(
            [.. values, new("false passes at most", 100 * FalsePassProbability(given.Of(Guard)), Units.Percent)],
            Word(Of(value.Value, lower, upper, guard)));
    }

    public static string Word(Decision decision) => decision switch
    {
        Decision.Pass => "pass",
        Decision.ConditionalPass => "conditional pass",
        Decision.ConditionalFail => "conditional fail",
        _ => "fail",
    };
}
