using Refettle.Logbook;
using Refettle.Stock;

namespace Refettle.Cli.Views;

/// <summary>What an entry tells, in a line.</summary>
internal static class Told
{
    public static string Of(HistoryLine line) => line.Happening switch
    {
        CarOpened opened => $"{opened.Name}{(opened.Year is { } year ? $", {year}" : "")}: the car begins",
        StructureAdded added => $"{added.Source}: {Sum(added)}",
        StructureRemoved removed => $"taken out: {string.Join(", ", removed.Things.Concat(line.AlsoRemoved))}",
        StepDone done => $"{done.Fact} done{(done.Way is null ? "" : $", way {done.Way}")}{(done.Took is null ? "" : $", {done.Took}")}",
        StepReversed back => $"{back.Fact} taken back{(back.Took is null ? "" : $", {back.Took}")}",
        Tried tried => $"{tried.Try.Joint} tried: {tried.Try.Rung}, {(tried.Try.Becomes is { } now ? StuckView.Word(now) : "it held")}",
        StanceTaken stance => $"the car stands: {stance.Stance}",
        SoundnessJudged judged => $"{judged.Part} found {(judged.Sound ? "sound" : "too weak to carry the car")}",
        JointTightened tightened =>
            $"{tightened.Joint} {(tightened.How == Tightness.Snug ? "snug only" : "torqued")}{With(", ", tightened.Torque)}{With(" with ", tightened.Instrument)}{With(" by ", tightened.By)}{tightened.Told()}",
        HeightMeasured measured => $"height {measured.Corner} {measured.Height}, hub centre to wheel arch",
        AlignmentMeasured measured => AlignmentWords.Of(measured)!,
        JobEntered entered => $"job {entered.Job.Id}, {JobView.Word(entered.Job.Wish)}: {entered.Job.Name}",
        JobDropped dropped => $"job {dropped.Job} given up{With(": ", dropped.Why)}",
        JobDone done => $"job {done.Job} done{With(", ", done.Took)}",
        MeansSet means => $"to spend: {JobView.Of(means.Means, "")}",
        BagPacked packed =>
            $"bag {packed.Code}{With(": ", packed.Holds)}{(packed.For.Count == 0 ? "" : $", for {string.Join(", ", packed.For)}")}{With(", in ", packed.Place)}",
        BagMoved moved => $"bag {moved.Code} now in {moved.Place}",
        BagEmptied emptied => $"bag {emptied.Code} emptied",
        PhotoTaken taken =>
            $"photo {taken.Photo.Hash[..8]}{(taken.Photo.Of.Count == 0 ? "" : $" of {string.Join(", ", taken.Photo.Of)}")}{With(": ", taken.Photo.Says)}",
        ScopeChosen chosen => $"chosen to do: {string.Join(", ", chosen.Jobs)}",
        SettingsChosen => "settings chosen",
        MoneySpent spent => MoneyWords.Of(spent.Receipt),
        Noted noted => noted.About is null ? noted.Text : $"{noted.About}: {noted.Text}",
        _ when CalendarWords.Of(line.Happening) is { } told => told,
        Declared declared =>
            $"stated ({declared.Topic.ToString().ToLowerInvariant()}): {(declared.About is null ? "" : declared.About + ": ")}{declared.Text}",
        Struck struck => $"entry {$"{struck.Target:N}"[^8..]} struck{(struck.Why is null ? "" : $": {struck.Why}")}",
        StockHappening stock => StockSayings.Of(stock),
        { } other when JudgingSayings.Of(other, thing => thing) is { } told => told,
        { } other when CoatingWords.Of(other, thing => thing) is { } told => told,
        _ => $"{line.Entry.Kind}, from a newer version of the program",
    };

    private static string With(string word, object? thing) => thing is null ? "" : word + thing;

    private static string Sum(StructureAdded added)
    {
        (int Count, string One, string Many)[] sums =
        [
            (added.Added.Parts.Count, "part", "parts"),
            (added.Added.Joints.Count, "joint", "joints"),
            (added.Added.States.Count, "state", "states"),
            (added.Added.SubAssemblies.Count, "sub-assembly", "sub-assemblies"),
            (added.Added.Spaces.Count, "space", "spaces"),
            (added.Added.Zones.Count, "zone", "zones"),
            (added.Tied.Count, "loose end tied", "loose ends tied"),
        ];
        return string.Join(", ", sums.Where(sum => sum.Count > 0).Select(sum => Wording.Count(sum.Count, sum.One, sum.Many)));
    }
}
