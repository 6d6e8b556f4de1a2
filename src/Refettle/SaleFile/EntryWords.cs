using Refettle.Logbook;

namespace Refettle.SaleFile;

/// <summary>What an entry tells, for somebody who was not there.</summary>
internal static class EntryWords
{
    public static string Of(SeenEntry entry, CarNames names) => entry.Told switch
    {
        CarOpened opened => $"The log of {opened.Name} begins",
        StructureAdded added => $"Described: {added.Source}",
        StructureRemoved removed => $"Taken out of the description: {string.Join(", ", removed.Things)}",
        StepDone done when entry.ChangesNothing => $"{Did(done.Fact, names)}: marked once more",
        StepReversed back when entry.ChangesNothing =>
            $"{names.Of(back.Fact)}: marked as {(back.Fact.Kind == FactKind.Off ? "fitted; it was not off" : "closed or undone; it was so already")}",
        StepDone done => $"{Did(done.Fact, names)}{With(", way: ", done.Way)}{With(", ", done.Took)}",
        StepReversed back => $"{Undid(back.Fact, names)}{With(", ", back.Took)}",
        Tried tried => $"Tried to open {names.OfJoint(tried.Try.Joint)}: {tried.Try.Rung}, {Became(tried.Try.Becomes)}",
        StanceTaken taken => $"Car put: {names.Of(Fact.State(taken.Stance))}",
        SoundnessJudged judged => $"{names.Unit(judged.Part)} found {Soundness(judged)}",
        JointTightened tightened => $"{names.OfJoint(tightened.Joint)} {Tight(tightened)}",
        HeightMeasured measured => $"Height {Corner(measured.Corner)}: {measured.Height}, hub centre to wheel arch",
        SettingsChosen => "How the owner counts",
        Noted noted => noted.About is null ? noted.Text : $"{names.Of(noted.About)}: {noted.Text}",
        PhotoTaken taken => $"Photo of {Of(taken.Photo, names)}{With(": ", taken.Photo.Says)}",
        BagPacked packed => $"Bag {BagCode.Shown(packed.Code)} packed{With(": ", packed.Holds)}",
        BagMoved moved => $"Bag {BagCode.Shown(moved.Code)} moved to {moved.Place}",
        BagEmptied emptied => $"Bag {BagCode.Shown(emptied.Code)} used up",
        Declared declared => $"Stated by the owner: {declared.Text}",
        Struck struck => $"An earlier entry struck{With(": ", struck.Why)}",
        PiecesMoved moved =>
            $"{moved.Count} × {moved.Batch.Number} ({moved.Batch.Condition.ToString().ToLowerInvariant()}): {Place(moved.From, entry.Entry.Car, names)} to {Place(moved.To, entry.Entry.Car, names)}{With(", ", moved.Why)}",
        { } told => JudgingSayings.Of(told, names.Of) ?? CoatingWords.Of(told, names.Of) ?? CalendarWords.Sentence(told)
            ?? AlignmentWords.Of(told) ?? Unseen(entry),
        null => Unseen(entry),
    };

    public static string Soundness(SoundnessJudged judged) => judged.Sound ? "sound" : "too weak to carry the car";

    public static string Became(JointCondition? condition) => condition switch
    {
        null => "it held",
        JointCondition.Freed => "it came free",
        JointCondition.Rounded => "it rounded",
        JointCondition.TurnsWithSleeve => "it turns with its sleeve",
        JointCondition.SnappedProud => "it broke with a stub left",
        JointCondition.SnappedFlush => "it broke off flush",
        JointCondition.ThreadGone => "its thread was gone",
        _ => "it was as before",
    };

    public static string Tight(JointTightened tightened) => tightened.How == Tightness.Snug
        ? "closed, snug only"
        : $"torqued{With(" to ", tightened.Torque)}{With(" with ", tightened.Instrument)}{With(" by ", tightened.By)}{tightened.Told()}";

    public static string Corner(string corner) => corner switch
    {
        "fl" => "front left",
        "fr" => "front right",
        "rl" => "rear left",
        "rr" => "rear right",
        _ => corner,
    };

    /// <summary>What a photo shows.</summary>
    public static string Of(Photo photo, CarNames names) => photo.Of.Count == 0 ? "the car" : string.Join(", ", photo.Of.Select(names.Of));

    private static string Place(StockPlace place, string own, CarNames names) =>
        place.Position() is var (car, thing)
            ? car == own
            ? names.Of(thing)
            : "another car"
            : place.Kind == StockPlaceKind.Supplier
            ? "a supplier"
            : place.Kind.ToString().ToLowerInvariant();

    private static string Did(Fact fact, CarNames names) => fact.Kind switch
    {
        FactKind.Off => $"{names.Of(fact)} taken off",
        FactKind.Free => $"{names.Of(fact)} separated from everything",
        FactKind.Open => $"{names.Of(fact)} opened",
        FactKind.Reach => $"{names.Of(fact)} opened to work in",
        _ => names.Of(fact),
    };

    private static string Undid(Fact fact, CarNames names) => fact.Kind switch
    {
        FactKind.Off or FactKind.Free => $"{names.Of(fact)} fitted",
        FactKind.Open => $"{names.Of(fact)} closed",
        FactKind.Reach => $"{names.Of(fact)} closed up",
        _ => $"{names.Of(fact)}: undone",
    };

    private static string Unseen(SeenEntry entry) => entry.Given.Fields is null
        ? $"An entry of the kind {entry.Entry.Kind}"
        : $"{entry.Entry.Kind}{string.Concat(entry.Given.Fields.Where(field => field.Text is not (null or "null" or "[]")).Select(field => $", {field.Name} {field.Text}"))}; the rest is blacked out by the owner";

    internal static string With(string word, object? thing) => thing is null ? "" : word + thing;
}
