using Refettle.Logbook;
using Refettle.Stock;

namespace Refettle.Web.Words;

/// <summary>What an entry tells, in a line.</summary>
public static class LogWords
{
    public static string Of(HistoryLine line, CarLookup car, IReadOnlyDictionary<Guid, HistoryLine> byId) => line.Happening switch
    {
        null => line.Standing == Standing.FromNewerVersion
            ? $"From a newer version: {line.Entry.Kind}"
            : $"Cannot be read: {line.Entry.Kind}",
        CarOpened opened => $"Logbook opened: {opened.Name}",
        StructureAdded added => $"Described: {added.Source} ({Count(added.Added)})",
        StructureRemoved removed => $"Taken out of the description: {string.Join(", ", removed.Things)}",
        StepDone done => $"Done: {car.Name(done.Fact)}",
        StepReversed reversed => $"Taken back: {car.Name(reversed.Fact)}",
        Tried tried =>
            $"Tried: {car.Name(Fact.Open(tried.Try.Joint))}, {tried.Try.Rung} ({tried.Try.Becomes?.ToString().ToLowerInvariant() ?? "it held"})",
        StanceTaken taken => $"Car put: {car.Name(Fact.State(taken.Stance))}",
        SoundnessJudged judged => $"{car.PartName(judged.Part)} found {(judged.Sound ? "sound" : "too weak to carry the car")}",
        JointTightened tightened =>
            $"{(tightened.How == Tightness.Snug ? "Snug only" : "Torqued")}: {car.Subject(Fact.Open(tightened.Joint))}{(tightened.Torque is { } torque ? $", {torque}" : "")}{tightened.Told()}",
        HeightMeasured measured => $"Height {measured.Corner}: {measured.Height}, hub centre to wheel arch",
        AlignmentMeasured measured => AlignmentWords.Of(measured)!,
        SettingsChosen => "Settings chosen",
        MoneySpent spent => MoneyWords.Of(spent.Receipt),
        Noted noted => noted.Text,
        Declared declared => $"Stated: {declared.Text}",
        Struck struck =>
            $"Undone: {(byId.TryGetValue(struck.Target, out var target) ? Of(target, car, byId) : "an entry that is not here yet")}",
        StockHappening stock => StockSayings.Of(stock, thing => Thing.TryParse(thing, out _) ? CaptureWords.Thing(thing, car) : thing),
        { } other => JobWords.Of(other, car.Car) ?? CalendarWords.Sentence(other) ?? CaptureWords.Of(other, car)
            ?? JudgingSayings.Of(other, thing => CaptureWords.Thing(thing, car))
                ?? CoatingWords.Of(other, thing => CaptureWords.Thing(thing, car)) ?? line.Entry.Kind,
    };

    private static string Count(Structure added) => string.Join(", ", new (int Count, string)[]
    {
        (added.Parts.Count, "part"),
        (added.Joints.Count, "joint"),
        (added.States.Count, "state"),
        (added.Spaces.Count, "space"),
    }.Where(some => some.Count > 0).Select(some => Plain.Some(some.Count, some.Item2)));

}
