using Refettle.CloseUp;
using Refettle.CloseUp.Refit;
using Refettle.Logbook;

namespace Refettle.SaleFile.Chapters;

/// <summary>What all chapters draw on, worked out once.</summary>
internal sealed class Sources
{
    public Sources(SaleQuestion question)
    {
        Car = question.History.Car;
        Privacy = question.Privacy;
        Names = new(Car.Structure);
        Entries = SeenEntry.Of(question.History, question.Privacy);
        Stories = PartStory.Of(Car, Witness.Of(Entries, Names));
        Closing = ClosingRecord.Of(question.History);
        RideHeight = RideHeightLedger.Of(Car, Closing.Opened, Closing.Tightenings);
        var refit = RefitPlanner.Of(question.History);
        ChecksDue = refit.Checks.Where(check => check.Waste.Count == 0).ToValueList();
        IsToBleed = refit.Bleeding.Count > 0 || Car.Done.Contains(Fact.State("brakes-drained"));
        Undecided = TorqueConflicts.Of(question.History);
        Declared = InForce<Declared>().ToValueList();
        NumberOf = Entries.ToDictionary(entry => entry.Entry.Id, entry => entry.Number);
    }

    public Car Car { get; }

    public Privacy Privacy { get; }

    public CarNames Names { get; }

    public ValueList<SeenEntry> Entries { get; }

    public ValueList<PartStory> Stories { get; }

    public ClosingRecord Closing { get; }

    public ValueList<RideHeightLine> RideHeight { get; }

    /// <summary>Checks at the end that opened work asks for and that are not marked as done since.</summary>
    public ValueList<EndCheck> ChecksDue { get; }

    /// <summary>The brakes are drained, or opened and neither bled nor filled since.</summary>
    public bool IsToBleed { get; }

    public ValueList<TorqueConflict> Undecided { get; }

    public ValueList<(SeenEntry Entry, Declared Told)> Declared { get; }

    public Dictionary<Guid, int> NumberOf { get; }

    public IEnumerable<(SeenEntry Entry, T Told)> InForce<T>()
        where T : Happening => Entries.Where(entry => entry is { Counts: true, Told: T }).Select(entry => (entry, (T)entry.Told!));

    /// <summary>Numbers of the entries of these kinds, also of those whose words are blacked out.</summary>
    public ValueList<int> NumbersOf(params string[] kinds) =>
        Entries.Where(entry => entry.Counts && kinds.Contains(entry.Entry.Kind)).Select(entry => entry.Number).ToValueList();

    /// <summary>Days on which work on the car was recorded.</summary>
    public IEnumerable<IGrouping<DateOnly, SeenEntry>> WorkDays => Entries
        .Where(entry => entry is { IsWork: true, Told: StepDone or StepReversed or Tried or JointTightened }).GroupBy(entry => entry.Day)
        .OrderBy(day => day.Key);

    /// <summary>Minutes that an entry says its work took; null when it says none.</summary>
    public static Minutes? Took(SeenEntry entry) => entry.Told switch
    {
        StepDone done => done.Took,
        StepReversed back => back.Took,
        Tried tried => tried.Try.Took,
        _ => null,
    };

    public static string Count(int count, string one, string? many = null) => count == 1 ? $"1 {one}" : $"{count} {many ?? one + "s"}";
}
