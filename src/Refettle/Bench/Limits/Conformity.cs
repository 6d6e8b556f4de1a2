using MathNet.Numerics.Distributions;

namespace Refettle.Bench.Limits;

/// <summary>How likely a measured thing is within its limits, given what the measurement is worth.</summary>
public static class Conformity
{
    /// <summary>A band of tolerance: at least one end is known; values of one unit.</summary>
    public static Input<Measure> Lower { get; } = Inputs.Any("lower", "lower limit").Optional();

    public static Input<Measure> Upper { get; } = Inputs.Any("upper", "upper limit").Optional();

    public static Input<Measure> Value { get; } = Inputs.Any("value", "measured value");

    private static readonly Input<Measure> Uncertainty = Inputs.Any("u", "standard uncertainty of the measurement (one sigma)");

    public static BenchNumber Number { get; } = new()
    {
        Name = "conformity",
        Says = "Chance that a measured thing is within its limits",
        Room = "Limits",
        Formula = "p = Φ((upper − y)/u) − Φ((lower − y)/u)",
        Source = "JCGM 106:2012, conformity of a normally spread measurement",
        Uncertainty = "As good as u. A reading to half a division, spread evenly over ± a, has u = a/√3.",
        Inputs = [Value, Uncertainty, Lower, Upper],
        Example = "value=-0.60deg u=0.10deg lower=-1.00deg upper=-0.50deg",
        Work = Work,
    };

    /// <summary>Chance from 0 to 1; limits may be infinite. Standard uncertainty more than 0, all of one unit.</summary>
    public static double Probability(double value, double standardUncertainty, double lower, double upper) =>
        Normal.CDF(0, 1, (upper - value) / standardUncertainty) - Normal.CDF(0, 1, (lower - value) / standardUncertainty);

    /// <summary>Least value that is above a lower limit with the given chance, 0.5 to below 1.</summary>
    public static double LeastFor(double lower, double standardUncertainty, double probability) =>
        lower + Normal.InvCDF(0, 1, probability) * standardUncertainty;

    /// <summary>Both ends in the value's unit, or why not.</summary>
    internal static Result<(double Lower, double Upper)> Band(Given given, Unit unit)
    {
        if (!given.Has(Lower) && !given.Has(Upper))
            return Bad("lower", "neither limit is given", "Give lower, upper or both");
        var measures = new[] { (Lower, given.Has(Lower)), (Upper, given.Has(Upper)) }.Where(pair => pair.Item2).Select(pair => pair.Item1);
        if (measures.FirstOrDefault(input => given.Of(input).Unit.Dimension != unit.Dimension) is { } odd)
            return Bad(odd.Name, $"{given.Of(odd)} does not measure what {given.Of(Value)} does", "Give all in units of one kind");
        var lower = given.Has(Lower) ? given.Of(Lower).In(unit) : double.NegativeInfinity;
        var upper = given.Has(Upper) ? given.Of(Upper).In(unit) : double.PositiveInfinity;
        return lower < upper
            ? Result<(double, double)>.Good((lower, upper))
            : Bad("lower", "it is not below upper", "Exchange lower and upper");
    }

    /// <summary>An uncertainty in the value's unit, more than 0, or why not.</summary>
    internal static Result<double> Spread(Given given, Input<Measure> input, Unit unit)
    {
        var measure = given.Of(input);
        if (measure.Unit.Dimension != unit.Dimension)
            return Result<double>.Bad(
                new Fault(input.Name, $"{measure} does not measure what {given.Of(Value)} does", "Give all in units of one kind"));
        var width = measure.Value * measure.Unit.Factor / unit.Factor;
        return width > 0
            ? Result<double>.Good(width)
            : Result<double>.Bad(new Fault(input.Name, $"{measure} is not more than 0", "Give a value above 0"));
    }

    private static Result<Outcome> Work(Given given)
    {
        var value = given.Of(Value);
        var (band, spread) = (Band(given, value.Unit), Spread(given, Uncertainty, value.Unit));
        if (!band.IsGood || !spread.IsGood)
            return Result<Outcome>.Bad(band.Faults.Concat(spread.Faults));
        var chance = Probability(value.Value, spread.Value, band.Value.Lower, band.Value.Upper);
        return Outcome.Of(new BenchValue("chance to be within limits", chance * 100, Units.Percent));
    }

    private static Result<(double, double)> Bad(string place, string found, string mend) =>
        Result<(double, double)>.Bad(new Fault(place, found, mend));
}
