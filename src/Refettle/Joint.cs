namespace Refettle;

/// <summary>The kind of fastening.</summary>
public enum JointKind
{
    Bolt,
    Nut,
    Stud,
    Screw,
    Clip,
    Connector,
    Hose,
    Pipe,
    Clamp,
    Cable,
    Pin,
    PressFit,
    Taper,
    Spline,
    Hook,
    Strap,
    Bond,
    Seal,
    Weld,
    Rivet,

    /// <summary>Held by its place alone: lifted or slid out.</summary>
    Seat,
}

/// <summary>What holds two or more parts together.</summary>
public sealed record Joint
{
    public required string Id { get; init; }

    /// <summary>What a mechanic would call it; null when its parts say enough.</summary>
    public string? Name { get; init; }

    public JointKind Kind { get; init; }

    /// <summary>The parts it holds together, two or more.</summary>
    public required ValueList<string> Holds { get; init; }

    /// <summary>How many alike (five wheel nuts), 1 or more. Minutes are for all of them.</summary>
    public int Count { get; init; } = 1;

    /// <summary>Thread designation after ISO 261 (<c>M10x1.25</c>) or a Unified thread (<c>3/8-16 UNC</c>).</summary>
    public string? Thread { get; init; }

    /// <summary>Property class after ISO 898-1 (<c>8.8</c>) or another grade.</summary>
    public string? Grade { get; init; }

    public NewtonMetres? Torque { get; init; }

    /// <summary>New fasteners each time.</summary>
    public bool SingleUse { get; init; }

    /// <summary>Holds a bonded rubber bush: final torque at ride height.</summary>
    public bool AtRideHeight { get; init; }

    /// <summary>0 (dry cabin) to 4 (sea salt underneath); null takes the zone's.</summary>
    public int? Exposure { get; init; }

    /// <summary>The methods to open it, one or more.</summary>
    public required ValueList<Way> Ways { get; init; }

    /// <summary>How it is closed, whichever way it was opened; null when that way is turned round.</summary>
    public RefitWay? Refit { get; init; }

    /// <summary>What readings of it may be, as its sheet says; the owner's own entry comes before.</summary>
    public ValueList<StatedLimit> Limits { get; init; } = [];

    public string? Kit { get; init; }

    /// <summary>Origin of thread, grade and torque.</summary>
    public Origin Origin { get; init; }
}

/// <summary>Where a way is done.</summary>
public enum WorkPlace
{
    OnCar,

    /// <summary>With all parts of the joint off the car.</summary>
    OnBench,
}

/// <summary>One method to open a joint, or to bring about a state.</summary>
public sealed record Way
{
    public required string Id { get; init; }

    /// <summary>The tool that decides the method; <c>hands</c> when none.</summary>
    public required string Tool { get; init; }

    /// <summary>Minutes to open all of the joint.</summary>
    public Minutes Open { get; init; }

    /// <summary>Minutes to close it again at refit.</summary>
    public Minutes Close { get; init; }

    /// <summary>What must be true first.</summary>
    public ValueList<Fact> Clear { get; init; } = [];

    public WorkPlace Where { get; init; }

    /// <summary>The chance that it works first time, 0 to 1; null when nothing is known. It does not enter the cost.</summary>
    public decimal? Odds { get; init; }

    /// <summary>Parts it destroys.</summary>
    public ValueList<string> Destroys { get; init; } = [];

    /// <summary>Money for what it uses up (new clips, fluid), in the car's currency.</summary>
    public Money Spends { get; init; }

    /// <summary>How one works: <c>standing</c>, <c>under</c>, <c>inside</c> …; null takes the zone's.</summary>
    public string? Posture { get; init; }

    public ValueList<string> Cautions { get; init; } = [];

    /// <summary>What it can set alight beyond what its tool's words say: it only adds to them; null when nothing is said.</summary>
    public Danger? Danger { get; init; }

    public Origin Origin { get; init; }
}
