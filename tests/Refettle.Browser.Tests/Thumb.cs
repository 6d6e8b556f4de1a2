namespace Refettle.Browser.Tests;

/// <summary>12 mm to press and 2 mm between, in the millimetres of CSS; those of a phone's glass are about a third smaller.</summary>
internal static class Thumb
{
    private const double PixelsPerMillimetre = 96 / 25.4;

    /// <summary>12 mm are 45.4 pixels; 48 are asked for since the pages were first made.</summary>
    public const double Size = 48;

    /// <summary>A tenth of a pixel is for rounding.</summary>
    public const double Gap = 2 * PixelsPerMillimetre - 0.1;

    /// <summary>What is smaller or nearer. A link in a sentence is exempt, as in WCAG 2.2, 2.5.8 Target
    /// Size (Minimum), exception Inline.</summary>
    public static IEnumerable<string> Faults(IEnumerable<Target> all)
    {
        var targets = all.Where(target => !target.IsInline).ToArray();
        var small = targets.Where(target => target.IsWhole && Math.Min(target.Width, target.Height) < Size)
            .Select(target => $"small: {target}");
        return small.Concat(targets.SelectMany((target, i) => targets.Skip(i + 1).Where(other => target.Apart(other) < Gap)
            .Select(other => $"{target.Apart(other):0.0} px apart: {target} and {other}")));
    }
}
