using Refettle.Logbook;

namespace Refettle.SaleFile;

/// <summary>What an entry shows about one part.</summary>
internal enum Shows
{
    Condition,
    TakenOff,
    Fitted,

    /// <summary>Work on the part itself or on what holds it.</summary>
    Work,

    FittedNew,
    FittedUsed,
    FittedRefurbished,

    Refurbished,
}

/// <summary>An entry in force that shows something about a part.</summary>
/// <param name="Decided">What was decided of the part by it; null for all else.</param>
internal sealed record Witness(SeenEntry Entry, string Part, Shows Shows, string Says, VerdictKind? Decided = null)
{
    /// <summary>All of a log. A kind of entry that can show something about a part has its line here.</summary>
    public static IEnumerable<Witness> Of(IEnumerable<SeenEntry> entries, CarNames names) =>
        entries.Where(entry => entry.IsWork).SelectMany(entry => Of(entry, names));

    private static IEnumerable<Witness> Of(SeenEntry entry, CarNames names) => entry.Told switch
    {
        StepDone { Fact.Kind: FactKind.Off } done =>
            names.Moved(done.Fact.Subject).Select(part => new Witness(entry, part, Shows.TakenOff, "taken off")),
        StepReversed { Fact.Kind: FactKind.Off } back =>
            names.Moved(back.Fact.Subject).Select(part => new Witness(entry, part, Shows.Fitted, "fitted")),
        Tried tried => OfJoint(entry, tried.Try.Joint, Shows.Work, $"{tried.Try.Rung}: {EntryWords.Became(tried.Try.Becomes)}", names),
        Found found when Thing.TryParse(found.Finding.Of, out var thing) => thing.Kind switch
        {
            ThingKind.Part => [new(entry, thing.Id, Shows.Condition, JudgingSayings.Of(found.Finding))],
            ThingKind.Joint =>
                OfJoint(entry, thing.Id, Shows.Condition, $"{names.OfJoint(thing.Id)}: {JudgingSayings.Of(found.Finding)}", names),
            _ => [],
        },
        VerdictGiven given =>
            [new(entry, given.Verdict.Part, Shows.Work, $"verdict: {given.Verdict.Kind.ToString().ToLowerInvariant()}",
                given.Verdict.Kind)],
        VerdictWithdrawn gone => [new(entry, gone.Part, Shows.Work, "verdict withdrawn", VerdictKind.Keep)],
        PiecesMoved moved
            when moved.To.Position() is var (car, about) && car == entry.Entry.Car && Thing.TryParse(about, out var place)
                && place.Kind == ThingKind.Part =>
            [new(entry, place.Id, Fitted(moved.Batch.Condition),
                $"{moved.Batch.Condition.ToString().ToLowerInvariant()} part {moved.Batch.Number} fitted")],
        SoundnessJudged judged => [new(entry, judged.Part, Shows.Condition, $"found {EntryWords.Soundness(judged)}")],
        Noted { About: { } about } noted when Thing.TryParse(about, out var thing) => thing.Kind switch
        {
            ThingKind.Part => [new(entry, thing.Id, Shows.Condition, $"“{noted.Text}”")],
            ThingKind.Joint => OfJoint(entry, thing.Id, Shows.Condition, $"{names.OfJoint(thing.Id)}: “{noted.Text}”", names),
            _ => [],
        },
        _ => [],
    };

    private static Shows Fitted(PieceCondition condition) => condition switch
    {
        PieceCondition.New => Shows.FittedNew,
        PieceCondition.Used => Shows.FittedUsed,
        _ => Shows.FittedRefurbished,
    };

    private static IEnumerable<Witness> OfJoint(SeenEntry entry, string joint, Shows shows, string says, CarNames names) =>
        names.Joint(joint) is { Holds: [var first, ..] } ? [new(entry, first, shows, says)] : [];
}
