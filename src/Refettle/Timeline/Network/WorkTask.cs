using NodaTime;
using Refettle.Access;
using Refettle.Stuck;
using Refettle.Timeline;
using Refettle.Timeline.Spells;

namespace Refettle.Timeline.Network;

/// <summary>One thing to do or to wait for, with what it comes from.</summary>
public sealed record WorkTask
{
    /// <summary>Named after what it is about, so that it keeps its name when the plan changes around it: <c>strip.rear-axle</c>.</summary>
    public required string Id { get; init; }

    public required TaskKind Kind { get; init; }

    /// <summary>What to do, in words.</summary>
    public required string Says { get; init; }

    /// <summary>Minutes of work; for a wait minutes on the wall clock.</summary>
    public required Minutes Takes { get; init; }

    /// <summary>Where the minutes come from.</summary>
    public Origin Origin { get; init; }

    public Pace Pace { get; init; } = Pace.Pausing;

    /// <summary>Steps that it does in this order; of a refit task the steps that it takes back, in the order of taking back.</summary>
    public ValueList<Step> Steps { get; init; } = [];

    /// <summary>The stance that the car must be in; for a change of stance the one that it changes to. Null when any will do.</summary>
    public string? Stance { get; init; }

    /// <summary>The zone, or <c>bench</c>; null for work that has no place on the car.</summary>
    public string? Place { get; init; }

    public string? Posture { get; init; }

    /// <summary>The place of the owner's, by its identifier, that the car stands at for it; of a move the
    /// one that it is moved to. Null for where it usually stands.</summary>
    public string? At { get; init; }

    /// <summary>Tools and facilities it needs, as <see cref="Needed"/> names them, beside the owner's own hands.</summary>
    public ValueList<string> Uses { get; init; } = [];

    /// <summary>The joint that is tried or soaked.</summary>
    public string? Joint { get; init; }

    /// <summary>The tries that may be made here, mildest first. The gate of each is open at its place, given what comes before.</summary>
    public ValueList<Rung> Rungs { get; init; } = [];

    /// <summary>Tries that may not be made here, with what closes their gate.</summary>
    public ValueList<ClosedTry> Closed { get; init; } = [];

    /// <summary>Why it is not to be done as planned, whatever comes before: a weld beside what
    /// burns; null when nothing forbids it.</summary>
    public string? NotYet { get; init; }

    /// <summary>The chance that it is needed at all, 0 to 1, where it depends on how tries before it end.</summary>
    public double Chance { get; init; } = 1;

    /// <summary>What a coat puts on: <c>epoxy primer</c>.</summary>
    public string? Coat { get; init; }

    /// <summary>What it takes of parts and paint, and how that stands.</summary>
    public ValueList<PlaceParts> Parts { get; init; } = [];

    /// <summary>Of a wait, what it takes at worst, where the owner said so.</summary>
    public Minutes? AtWorst { get; init; }

    /// <summary>Whose promise a wait is.</summary>
    public Promiser Promised { get; init; }

    /// <summary>The part that it bares to bright metal, by identifier.</summary>
    public string? Bares { get; init; }

    /// <summary>What a wait is for, where the shelf knows it.</summary>
    public Consignment? Delivery { get; init; }

    /// <summary>What the air must be like while it is done and dries.</summary>
    public AirNeeds? Air { get; init; }

    /// <summary>Goals of the plan that it serves.</summary>
    public ValueList<Fact> For { get; init; } = [];

    /// <summary>Jobs that it belongs to.</summary>
    public ValueList<string> Jobs { get; init; } = [];

    public ValueList<string> Cautions { get; init; } = [];

    /// <summary>What is handed in, each kind apart from the others.</summary>
    public ValueList<Waste> Waste { get; init; } = [];

    /// <summary>When it starts, where the owner has settled that.</summary>
    public LocalDateTime? FixedStart { get; init; }

    /// <summary>By when it has to be done, where somebody else says so; null when nothing presses.</summary>
    public LocalDateTime? Latest { get; init; }

    /// <summary>Days on which it is not worked at.</summary>
    public ValueList<DayRange> Not { get; init; } = [];

    /// <summary>How far it is, where somebody said so.</summary>
    public TaskMark? Mark { get; init; }

    /// <summary>Of a check, or of handing in, what it is about that was undone since it was last done, or will be. While
    /// there is anything it is not done.</summary>
    public ValueList<Fact> Unseen { get; init; } = [];

    /// <summary>Its steps without what is true by itself once they are done.</summary>
    public IEnumerable<Step> Work => Steps.Where(step => !PlanOutline.FollowsByItself(step));

    public bool IsWait => Kind == TaskKind.Wait || Pace == Pace.WallClock;

    /// <summary>Work on the car itself, wherever the car stands. A job's own work counts, since nobody says
    /// whether it is done on the bench.</summary>
    public bool IsAtCar =>
        At is not null
        || (Place != Access.Ordering.Workplace.Bench && Kind is TaskKind.Strip or TaskKind.Stance or TaskKind.Soak or TaskKind.Shield
        or TaskKind.Try or TaskKind.Work or TaskKind.Brace or TaskKind.Gaps or TaskKind.Refit or TaskKind.Seal or TaskKind.Check
        or TaskKind.TrialFit);
}
