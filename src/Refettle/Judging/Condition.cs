using Refettle.Access;
using Refettle.Bench.Limits;

namespace Refettle.Judging;

/// <summary>How a part stands by all that was found of it.</summary>
/// <param name="Newest">The newest finding of each scale and quantity.</param>
/// <param name="Worst">How bad it is; null when nothing was found.</param>
/// <param name="Measured">What its readings say.</param>
public sealed record Condition(ValueList<Finding> Newest, Severeness? Worst, ValueList<MeasuredAnswer> Measured)
{
    public static Condition Of(Car car, string thing)
    {
        var newest = new Dictionary<(string, string?), Finding>();
        foreach (var finding in car.Findings.Where(finding => finding.Of == thing))
            newest[(finding.Scale, finding.Reading?.What)] = finding;
        var measured = newest.Values.Where(finding => finding.Reading is not null).Select(finding => Measuring.Of(finding, car.Limits)).ToValueList();
        var worded = newest.Values.Select(finding => ConditionScales.Find(finding.Scale)?.Find(finding.Word)?.How).OfType<Severeness>();
        var all = worded.Concat(measured.Select(How).OfType<Severeness>()).ToList();
        return new(newest.Values.ToValueList(), all.Count == 0 ? null : all.Max(), measured);
    }

    /// <summary>A reading that is past its limit.</summary>
    public MeasuredAnswer? Beyond() => Measured.FirstOrDefault(measured => measured.IsBeyond);

    private static Severeness? How(MeasuredAnswer measured) => measured.IsBeyond ? Severeness.Bad : measured.Decision switch
    {
        Decision.Pass => Severeness.Used,
        Decision.ConditionalPass => Severeness.Worn,
        _ => null,
    };
}
