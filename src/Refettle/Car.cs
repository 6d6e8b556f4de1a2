namespace Refettle;

/// <summary>A car as it stands: what it is made of, what has been done, how its owner counts.</summary>
public sealed record Car
{
    /// <summary>The stance that a car is in until its log says otherwise, where it is described.</summary>
    public const string OnWheels = "on-wheels";

    /// <summary>The stance in which the wheels carry the recorded height on blocks.</summary>
    public const string AtRideHeight = "at-ride-height";

    public required string Id { get; init; }

    public required string Name { get; init; }

    public int? Year { get; init; }

    /// <summary>ISO 4217 code.</summary>
    public string Currency { get; init; } = "EUR";

    public Structure Structure { get; init; } = Structure.Empty;

    /// <summary>All facts that hold now, without stances: what the log says and what follows from it by definition.</summary>
    public ValueList<Fact> Done { get; init; } = [];

    /// <summary>All that was ever undone, in order.</summary>
    public ValueList<Disturbed> Disturbed { get; init; } = [];

    /// <summary>The stance it is in; null until one is known.</summary>
    public string? Stance { get; init; }

    /// <summary>Parts found too weak to carry the car.</summary>
    public ValueList<string> Unsound { get; init; } = [];

    /// <summary>All tries at joints so far, in order.</summary>
    public ValueList<Try> Tries { get; init; } = [];

    /// <summary>All that was found, in order: of one thing and scale the newest counts.</summary>
    public ValueList<Finding> Findings { get; init; } = [];

    /// <summary>Limits for what is measured, the owner's own and his sheet's. None is built in.</summary>
    public ValueList<Limit> Limits { get; init; } = [];

    /// <summary>What the owner knows of getting parts again or putting them right.</summary>
    public ValueList<PartEstimate> Estimates { get; init; } = [];

    /// <summary>What the owner decided of parts.</summary>
    public ValueList<Verdict> Verdicts { get; init; } = [];

    /// <summary>What is told of the car as it came.</summary>
    public ValueList<BaselineAnswer> Baseline { get; init; } = [];

    /// <summary>What parts are coated with, and how far they are.</summary>
    public CarCoating Coating { get; init; } = CarCoating.Empty;

    /// <summary>Wheel angles were recorded before the strip.</summary>
    public bool IsAlignmentFound { get; init; }

    /// <summary>Joints that soak.</summary>
    public ValueList<Soaking> Soaking { get; init; } = [];

    /// <summary>Where the tool of a try reaches and where not.</summary>
    public ValueList<ToolReach> Reach { get; init; } = [];

    /// <summary>Tries that may be done although what they destroy is not in hand.</summary>
    public ValueList<LeaveForMissing> LeaveForMissing { get; init; } = [];

    /// <summary>Which part numbers go onto which parts and joints, where that is known.</summary>
    public ValueList<PositionNumber> Numbers { get; init; } = [];

    /// <summary>New pieces that were asked for by word and are not on the car yet.</summary>
    public ValueList<Want> Wants { get; init; } = [];

    /// <summary>All jobs that are thought of, done ones too.</summary>
    public ValueList<Job> Jobs { get; init; } = [];

    /// <summary>Identifiers of the jobs that are done.</summary>
    public ValueList<string> JobsDone { get; init; } = [];

    /// <summary>Identifiers of the jobs that the owner chose to do; null until he has. Jobs that must
    /// be done belong to it either way.</summary>
    public ValueList<string>? Scope { get; init; }

    public Means Means { get; init; } = Means.NoLimit;

    /// <summary>When there is time for it, and what its owner sets for it.</summary>
    public CarCalendar Calendar { get; init; } = CarCalendar.Empty;

    /// <summary>Bags of small parts, empty ones too.</summary>
    public ValueList<Bag> Bags { get; init; } = [];

    /// <summary>All pictures, in the order in which they were taken as the log knows it.</summary>
    public ValueList<Photo> Photos { get; init; } = [];

    public Settings Settings { get; init; } = Settings.Standard;

    /// <summary>The day to meet, which is the handover's where one is set; null when there is none.</summary>
    public DateOnly? Due() => Calendar.Handover is { } handover ? handover.By.Date.ToDateOnly() : Means.By;

    /// <summary>Days until then, 0 or more; null when there is no such day.</summary>
    /// <param name="today">By the clock on the wall.</param>
    public int? DaysLeft(DateOnly today) => Due() is { } due ? Math.Max(0, due.DayNumber - today.DayNumber) : null;
}

/// <summary>How the owner counts. Every figure is a choice, shown with the answer it shaped.</summary>
public sealed record Settings
{
    public static Settings Standard { get; } = new();

    /// <summary>Money that an hour of work is worth, in the car's currency, more than 0.</summary>
    public Money PerHour { get; init; } = new(30);

    /// <summary>Added to the cost for each unique part that has to come off.</summary>
    public Minutes UniqueOff { get; init; } = new(60);

    /// <summary>Assumed for a destroyed part that has no price.</summary>
    public Money UnknownPrice { get; init; } = new(100);

    /// <summary>Unique parts that may be destroyed after all.</summary>
    public ValueList<string> Lifted { get; init; } = [];

    /// <summary>Parts of this mass or more are propped before their last joint opens.</summary>
    public Kilograms PropFrom { get; init; } = new(12);

    /// <summary>What a change of tool is worth in the order of steps.</summary>
    public Minutes ToolChange { get; init; } = new(0.5m);

    /// <summary>What a change of zone is worth in the order of steps.</summary>
    public Minutes PlaceChange { get; init; } = new(1);

    /// <summary>What a change of posture is worth in the order of steps.</summary>
    public Minutes PostureChange { get; init; } = new(2);
}
