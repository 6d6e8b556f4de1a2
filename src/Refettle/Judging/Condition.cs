using Refettle.Access;
using Refettle.Bench.Limits;

namespace Refettle.Judging;

/// <summary>How a part stands by all that was found of it.</summary>
/// <param name="Newest">The findings with the newest word of each scale and the newest reading of each quantity.</param>
/// <param name="Worst">How bad it is; null when nothing was found.</param>
/// <param name="Measured">What its readings say.</param>
public sealed record Condition(ValueList<Finding> Newest, Severeness? Worst, ValueList<MeasuredAnswer> Measured)
{
    public static Condition Of(Car car, string thing)
    {
        var found = car.Findings.Where(finding => finding.Of == thing).ToList();
        var worded = found.Where(finding => finding.Word is not null).GroupBy(finding => finding.Scale).Select(group => group.Last())
            .ToList();
        var read = found.Where(finding => finding.Reading is not null)
            .GroupBy(finding => (finding.Scale, finding.Reading!.What.ToUpperInvariant())).Select(group => group.Last()).ToList();
        var measured = read.Select(finding => Measuring.Of(finding, car.Limits)).ToValueList();
        var all = worded.Select(finding => ConditionScales.Find(finding.Scale)?.Find(finding.Word)?.How).Concat(measured.Select(How))
            .OfType<Severeness>().ToList();
        return new(found.Where(finding => worded.Contains(finding) || read.Contains(finding)).Distinct().ToValueList(),
            all.Count == 0 ? null : all.Max(), measured);
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
