using System.Text.Json;

namespace Refettle.Logbook;

/// <summary>The kinds of happening that this version of the program knows, each with its word and version.</summary>
public static class Happenings
{
    private static readonly (string Word, int Version, Type Type)[] Known =
    [
        ("car-opened", 1, typeof(CarOpened)),
        ("structure-added", 1, typeof(StructureAdded)),
        ("structure-removed", 1, typeof(StructureRemoved)),
        ("step-done", 1, typeof(StepDone)),
        ("step-reversed", 1, typeof(StepReversed)),
        ("tried", 1, typeof(Tried)),
        ("found", 1, typeof(Found)),
        ("limit-set", 1, typeof(LimitSet)),
        ("part-estimated", 1, typeof(PartEstimated)),
        ("verdict-given", 1, typeof(VerdictGiven)),
        ("verdict-withdrawn", 1, typeof(VerdictWithdrawn)),
        ("baseline-told", 1, typeof(BaselineTold)),
        ("product-described", 1, typeof(ProductDescribed)),
        ("coating-system-described", 1, typeof(CoatingSystemDescribed)),
        ("coating-chosen", 1, typeof(CoatingChosen)),
        ("coat-applied", 1, typeof(CoatApplied)),
        ("kept-bare", 1, typeof(KeptBare)),
        ("soak-begun", 1, typeof(SoakBegun)),
        ("reach-judged", 1, typeof(ReachJudged)),
        ("missing-accepted", 1, typeof(MissingAccepted)),
        ("stance-taken", 1, typeof(StanceTaken)),
        ("soundness-judged", 1, typeof(SoundnessJudged)),
        ("joint-tightened", 1, typeof(JointTightened)),
        ("height-measured", 1, typeof(HeightMeasured)),
        ("alignment-measured", 1, typeof(AlignmentMeasured)),
        ("job-entered", 1, typeof(JobEntered)),
        ("job-dropped", 1, typeof(JobDropped)),
        ("job-done", 1, typeof(JobDone)),
        ("means-set", 1, typeof(MeansSet)),
        ("scope-chosen", 1, typeof(ScopeChosen)),
        ("bag-packed", 1, typeof(BagPacked)),
        ("bag-moved", 1, typeof(BagMoved)),
        ("bag-emptied", 1, typeof(BagEmptied)),
        ("photo-taken", 1, typeof(PhotoTaken)),
        ("settings-chosen", 1, typeof(SettingsChosen)),
        ("spell-added", 1, typeof(SpellAdded)),
        ("spell-removed", 1, typeof(SpellRemoved)),
        ("spell-missed", 1, typeof(SpellMissed)),
        ("time-zone-chosen", 1, typeof(TimeZoneChosen)),
        ("handover-set", 1, typeof(HandoverSet)),
        ("facility-added", 1, typeof(FacilityAdded)),
        ("facility-removed", 1, typeof(FacilityRemoved)),
        ("climate-expected", 1, typeof(ClimateExpected)),
        ("climate-read", 1, typeof(ClimateRead)),
        ("task-added", 1, typeof(TaskAdded)),
        ("task-removed", 1, typeof(TaskRemoved)),
        ("task-timed", 1, typeof(TaskTimed)),
        ("task-split", 1, typeof(TaskSplit)),
        ("task-fixed", 1, typeof(TaskFixed)),
        ("task-forbidden", 1, typeof(TaskForbidden)),
        ("task-equipped", 1, typeof(TaskEquipped)),
        ("task-marked", 1, typeof(TaskMarked)),
        ("timeline-kept", 1, typeof(TimelineKept)),
        ("money-spent", 1, typeof(MoneySpent)),
        ("noted", 1, typeof(Noted)),
        ("declared", 1, typeof(Declared)),
        ("struck", 1, typeof(Struck)),
        ("number-described", 1, typeof(NumberDescribed)),
        ("number-assigned", 1, typeof(NumberAssigned)),
        ("pieces-moved", 1, typeof(PiecesMoved)),
        ("kit-opened", 1, typeof(KitOpened)),
        ("made-up", 1, typeof(MadeUp)),
        ("reserved", 1, typeof(Reserved)),
        ("pieces-wanted", 1, typeof(PiecesWanted)),
        ("ordered", 1, typeof(Ordered)),
        ("order-promised", 1, typeof(OrderPromised)),
        ("order-cancelled", 1, typeof(OrderCancelled)),
        ("arrived", 1, typeof(Arrived)),
        ("sent-back", 1, typeof(SentBack)),
        ("offers-listed", 1, typeof(OffersListed)),
        ("sent-out", 1, typeof(SentOut)),
        ("came-back", 1, typeof(CameBack)),
        ("trial-fitted", 1, typeof(TrialFitted)),
    ];

    private static readonly Dictionary<(string Word, int Version), Type> TypeOf =
        Known.ToDictionary(known => (known.Word, known.Version), known => known.Type);

    private static readonly Dictionary<Type, (string Word, int Version)> WordOf =
        Known.ToDictionary(known => known.Type, known => (known.Word, known.Version));

    /// <summary>The words of all kinds known here.</summary>
    public static ValueList<string> Words { get; } = Known.Select(known => known.Word).ToValueList();

    /// <summary>The word and version that an entry about this happening carries.</summary>
    public static (string Kind, int Version) KindOf(Happening happening) => WordOf[happening.GetType()];

    /// <summary>The payload as JSON text, without what goes unsaid.</summary>
    public static string Encode(Happening happening) =>
        JsonSerializer.Serialize(happening, happening.GetType(), ExchangeJson.Short);

    /// <summary>What an entry tells. A good result without a value is an entry from a newer version: it is kept, shown and passed
    /// on, but says nothing to this one. A bad result is an entry of a known kind whose payload cannot be read.</summary>
    public static Result<Happening?> Decode(Entry entry)
    {
        if (!TypeOf.TryGetValue((entry.Kind, entry.Version), out var type))
            return Result<Happening?>.Good(null);
        try
        {
            return JsonSerializer.Deserialize(entry.Payload, type, ExchangeJson.Options) is Happening happening
                ? Result<Happening?>.Good(happening)
                : Unreadable(entry, "$");
        }
        catch (JsonException problem)
        {
            return Unreadable(entry, problem.Path ?? "$");
        }
    }

    private static Result<Happening?> Unreadable(Entry entry, string where) => Result<Happening?>.Bad(new Fault(
        $"entry {entry.Id}", $"its {entry.Kind} cannot be read at {where}", "It is kept as it is and changes nothing."));
}
