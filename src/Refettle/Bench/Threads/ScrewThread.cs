using System.Globalization;
using System.Text.RegularExpressions;

namespace Refettle.Bench.Threads;

/// <summary>Which family a thread is of.</summary>
public enum ThreadSystem
{
    /// <summary>ISO 68-1, 60°, dimensions in millimetres.</summary>
    Metric,

    /// <summary>ASME B1.1 Unified, 60°, inch diameters and threads per inch.</summary>
    Unified,
}

/// <summary>The basic profile of a 60° screw thread. Lengths in millimetres.</summary>
/// <param name="DiameterMillimetres">Nominal (major) diameter d.</param>
/// <param name="PitchMillimetres">Pitch P.</param>
public sealed partial record ScrewThread(string Designation, ThreadSystem System, double DiameterMillimetres, double PitchMillimetres)
{
    /// <summary>H = √3/2 · P (ISO 68-1).</summary>
    public double TriangleHeightMillimetres => Math.Sqrt(3) / 2 * PitchMillimetres;

    /// <summary>d2 = d − 0.75 H (ISO 724).</summary>
    public double PitchDiameterMillimetres => DiameterMillimetres - 0.75 * TriangleHeightMillimetres;

    /// <summary>d1 = d − 1.25 H (ISO 724).</summary>
    public double MinorDiameterMillimetres => DiameterMillimetres - 1.25 * TriangleHeightMillimetres;

    /// <summary>d3 = d1 − H/6 (ISO 898-1).</summary>
    public double RootDiameterMillimetres => MinorDiameterMillimetres - TriangleHeightMillimetres / 6;

    /// <summary>d0 = (d2 + d3)/2, whose circle is the metric stress area.</summary>
    public double StressDiameterMillimetres => (PitchDiameterMillimetres + RootDiameterMillimetres) / 2;

    /// <summary>Metric: π/4 · d0² (ISO 898-1). Unified: π/4 (D − 9√3/16 · P)², printed as 0.7854 (D −
    /// 0.9743/n)² in² (NSTS 08307 Rev A).</summary>
    public double StressAreaSquareMillimetres => System == ThreadSystem.Metric
        ? Math.PI / 4 * Square(StressDiameterMillimetres)
        : Math.PI / 4 * Square(DiameterMillimetres - 9 * Math.Sqrt(3) / 16 * PitchMillimetres);

    /// <summary>The area that loads are computed with: ISO 898-1 prints metric areas to three digits and multiplies those.</summary>
    public double RatedAreaSquareMillimetres =>
        System == ThreadSystem.Metric ? ThreeDigits(StressAreaSquareMillimetres) : StressAreaSquareMillimetres;

    /// <summary>tan φ = P / (π d2).</summary>
    public double LeadAngleDegrees => Math.Atan(PitchMillimetres / (Math.PI * PitchDiameterMillimetres)) * 180 / Math.PI;

    public override string ToString() => Designation;

    /// <summary>Reads <c>M10</c> (coarse), <c>M10x1.25</c>, <c>3/8-16</c>, <c>3/8-16 UNC</c>, <c>10-24</c>.</summary>
    public static Result<ScrewThread> Read(string place, string text)
    {
        var word = text.Trim().Replace('×', 'x').Replace(" x ", "x", StringComparison.OrdinalIgnoreCase);
        if (MetricForm().Match(word) is { Success: true } metric)
            return ReadMetric(place, metric);
        if (UnifiedForm().Match(word) is { Success: true } unified)
            return ReadUnified(place, unified);
        return Bad(place, $"'{text}' is not a thread", "Write M10 for a coarse thread, M10x1.25 for a fine one, 3/8-16 for an inch one");
    }

    private static Result<ScrewThread> ReadMetric(string place, Match match)
    {
        var diameter = Number(match.Groups["d"]);
        if (ThreadTable.CoarsePitch(diameter) is not { } coarse)
            return Bad(place, $"M{match.Groups["d"].Value} is not a size of the standard that is known here",
                "Known: " + ThreadTable.MetricSizes);
        var pitch = match.Groups["p"].Success ? Number(match.Groups["p"]) : coarse;
        if (pitch > coarse || !ThreadTable.IsPitch(pitch))
            return Bad(place, $"M{Plain(diameter)} has no pitch of {Plain(pitch)} mm",
                $"Its coarse pitch is {Plain(coarse)} mm; fine pitches are {ThreadTable.FinePitches(coarse)}");
        var name = pitch == coarse ? $"M{Plain(diameter)}" : $"M{Plain(diameter)}x{Plain(pitch)}";
        return Result<ScrewThread>.Good(new(name, ThreadSystem.Metric, diameter, pitch));
    }

    private static Result<ScrewThread> ReadUnified(string place, Match match)
    {
        var (size, perInch, series) =
            (match.Groups["d"].Value, int.Parse(match.Groups["n"].Value), match.Groups["series"].Value.ToUpperInvariant());
        if (ThreadTable.UnifiedSize(size) is not { } known)
            return Bad(place, $"{size} in is not a size that is known here", "Known: " + ThreadTable.UnifiedSizes);
        var actual = perInch == known.Coarse ? "UNC" : perInch == known.Fine ? "UNF" : null;
        return actual is null || (series.Length > 0 && series != actual)
            ? Bad(place, $"{size} in has no {series} thread of {perInch} per inch", $"It has {known.Coarse} (UNC) and {known.Fine} (UNF)")
            : Result<ScrewThread>.Good(
                new($"{size}-{perInch} {actual}", ThreadSystem.Unified, known.DiameterInches * 25.4, 25.4 / perInch));
    }

    private static Result<ScrewThread> Bad(string place, string found, string mend) =>
        Result<ScrewThread>.Bad(new Fault(place, found, mend));

    private static double ThreeDigits(double area) => area >= 100 ? Math.Round(area, MidpointRounding.AwayFromZero)
        : area >= 10 ? Math.Round(area, 1, MidpointRounding.AwayFromZero)
        : Math.Round(area, 2, MidpointRounding.AwayFromZero);

    private static double Square(double value) => value * value;

    private static string Plain(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);

    private static double Number(Group group) => double.Parse(group.Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^M\s*(?<d>\d{1,2}(?:\.\d)?)(?:\s*x\s*(?<p>\d(?:\.\d{1,2})?))?$", RegexOptions.IgnoreCase)]
    private static partial Regex MetricForm();

    [GeneratedRegex(@"^#?(?<d>\d+|(?:\d[ -])?\d{1,2}/\d{1,2})(?:\s*in)?\s*-\s*(?<n>\d{1,2})\s*(?<series>UNC|UNF)?$",
        RegexOptions.IgnoreCase)]
    private static partial Regex UnifiedForm();
}
