using Refettle.Logbook;
using Refettle.QuickLine;

namespace Refettle.Web.Words;

/// <summary>How a line was understood, in words.</summary>
public static class ReadingWords
{
    public static string Of(Reading reading, CarLookup car) =>
        $"{Kind(reading.Kind)}{(About(reading, car) is { } about ? $": {about}" : "")}{string.Concat(Figures(reading, car).Select(figure => $", {figure}"))}";

    private static string Kind(LineKind kind) => kind switch
    {
        LineKind.Note => "Note",
        LineKind.Finding => "Condition",
        LineKind.Try => "Tried",
        LineKind.Done => "Off or open",
        LineKind.Back => "Back on or closed",
        LineKind.Tightened => "Tightened",
        LineKind.Height => "Ride height",
        LineKind.BagPacked => "Put into",
        LineKind.BagMoved => "Moved",
        _ => "Emptied",
    };

    private static string? About(Reading reading, CarLookup car) => reading.About?.Split(' ') switch
    {
        null => reading.Kind == LineKind.Note ? "the whole car" : null,
        ["corner", var corner] => Spots.TryParse(corner, out var spot) ? spot.Words().ToLowerInvariant() : corner,
        _ => CaptureWords.Things(reading.Also.Prepend(reading.About!).ToValueList(), car),
    };

    private static IEnumerable<string> Figures(Reading reading, CarLookup car)
    {
        if (reading.Words is { } words)
            yield return words;
        if (CaptureWords.Things(reading.For, car) is { } things)
            yield return $"for {things}";
        if (reading.Condition is { } condition)
            yield return condition;
        if (reading is { Kind: LineKind.Finding, Scale: null })
            yield return "no word of its scale: kept as a note";
        if (reading.Need is { } need)
            yield return $"{need} new into the basket";
        if (reading.Kind == LineKind.Try)
            yield return reading.Rung is { } rung
                ? $"{rung}{(reading.IsSoaked ? ", soaked" : "")}: {Outcome(reading.Becomes)}"
                : "method not said: kept as a note";
        if (reading.Took is { } took)
            yield return $"{took}";
        if (reading.Kind == LineKind.Tightened)
            yield return reading.How == Tightness.Snug ? "snug only" : reading.Torque?.ToString() ?? "torque not said";
        if (reading.Height is { } height)
            yield return $"{height}";
    }

    private static string Outcome(JointCondition? becomes) => becomes switch
    {
        null => "it held",
        JointCondition.Freed => "free",
        JointCondition.TurnsWithSleeve => "turns with its sleeve",
        JointCondition.SnappedProud => "snapped, a stub to grip",
        JointCondition.SnappedFlush => "snapped flush",
        JointCondition.ThreadGone => "out, thread gone",
        var other => other.ToString()!.ToLowerInvariant(),
    };
}
