using Refettle.Logbook;

namespace Refettle.QuickLine;

/// <summary>What goes into the log for a reading that the user accepts.</summary>
public static class Telling
{
    /// <summary>One happening, or a few: the words of a line that its figures do not say are kept as a note beside them.</summary>
    public static ValueList<Happening> Of(Car car, LineAnswer answer, Reading reading)
    {
        var note = new Noted(answer.Line.Trim(), Named(reading.About));
        var facts = reading.Also.Prepend(reading.About)
            .SelectMany(about => Facts(car, answer.Line, reading with { About = about })).ToList();
        var isSaid = facts.Count > 0
            && (reading != answer.Best || answer.Unread.Count == 0 || reading.Words is not null || reading.Scale is not null);
        return [.. facts, .. isSaid ? [] : new[] { note }, .. Wanted(reading)];
    }

    private static IEnumerable<Happening> Facts(Car car, string line, Reading reading) => (reading.Kind, Id(reading.About)) switch
    {
        (LineKind.Finding, not null) when reading.Scale is { } scale =>
            [new Found(new() { Of = reading.About!, Scale = scale, Word = reading.Condition, Note = line.Trim() })],
        (LineKind.Try, { } joint) when reading.Rung is { } rung =>
            [new Tried(new(joint, rung, reading.Becomes, reading.IsSoaked, reading.Took))],
        (LineKind.Done, { } id) => [new StepDone(Step(reading.About!, id), null, reading.Took)],
        (LineKind.Back, { } id) => [new StepReversed(Step(reading.About!, id), reading.Took)],
        (LineKind.Tightened, { } joint) => Tightened(car, joint, reading),
        (LineKind.Height, { } corner) when reading.Height is { } height => [new HeightMeasured(corner, height)],
        (LineKind.BagPacked, { } code) => [new BagPacked(code, reading.Words, reading.For, null)],
        (LineKind.BagMoved, { } code) when reading.Words is { } place => [new BagMoved(code, place)],
        (LineKind.BagEmptied, { } code) => [new BagEmptied(code)],
        _ => [],
    };

    /// <summary>Pieces that are needed go into the basket, for the thing that the line is about.</summary>
    private static IEnumerable<Happening> Wanted(Reading reading) =>
        reading.Need is { } count && Named(reading.About) is { } thing ? [new PiecesWanted(thing, count)] : [];

    /// <summary>A joint that the log has open is closed by this too.</summary>
    private static IEnumerable<Happening> Tightened(Car car, string joint, Reading reading)
    {
        if (car.Done.Contains(Fact.Open(joint)))
            yield return new StepReversed(Fact.Open(joint), null);
        yield return new JointTightened(joint, reading.How, reading.Torque, null, null);
    }

    private static Fact Step(string about, string id) =>
        about.StartsWith("joint ", StringComparison.Ordinal) ? Fact.Open(id) : Fact.Off(id);

    private static string? Id(string? about) => about?[(about.IndexOf(' ') + 1)..];

    /// <summary>A note can be about a thing of the description only.</summary>
    private static string? Named(string? about) =>
        about is not null && (about.StartsWith("part ", StringComparison.Ordinal) || about.StartsWith("joint ", StringComparison.Ordinal))
            ? about
            : null;
}
