namespace Refettle.Access;

/// <summary>How good an answer is known to be.</summary>
public enum PlanStatus
{
    /// <summary>No plan costs less.</summary>
    Optimal,

    /// <summary>A valid plan; a cheaper one may exist, not below the bound.</summary>
    Feasible,

    /// <summary>No plan reaches the goals.</summary>
    Impossible,
}

/// <summary>What has to be done to reach the goals, in an order that works.</summary>
public sealed record Plan
{
    /// <summary>Nobody asked for anything, so nothing is taken apart.</summary>
    public static Plan Nothing { get; } = new() { Question = new() { Goals = [] }, Status = PlanStatus.Optimal };

    public required Question Question { get; init; }

    public required PlanStatus Status { get; init; }

    public Cost Cost { get; init; } = Cost.Nothing;

    /// <summary>No plan can cost less than this.</summary>
    public Minutes Bound { get; init; }

    public ValueList<Step> Steps { get; init; } = [];

    /// <summary>Changes of stance, beyond one for each stance used, that the order needs. The search for the least cost
    /// prices each stance once, so these minutes come on top of <see cref="Cost"/>.</summary>
    public Minutes ExtraStanceChanges { get; init; }

    /// <summary>Set when the goals cannot be reached.</summary>
    public Obstacle? Obstacle { get; init; }
}

/// <summary>The price of a plan in minutes.</summary>
/// <param name="Open">Minutes to open and take off.</param>
/// <param name="Close">Minutes to close and put back at refit.</param>
/// <param name="Destroyed">What is destroyed or used up, turned into minutes at the owner's rate.</param>
/// <param name="Unique">The owner's penalty for taking off unique parts.</param>
public sealed record Cost(Minutes Open, Minutes Close, Minutes Destroyed, Minutes Unique)
{
    public static Cost Nothing { get; } = new(default, default, default, default);

    public Minutes Total => Open + Close + Destroyed + Unique;

    public static Cost operator -(Cost left, Cost right) =>
        new(left.Open - right.Open, left.Close - right.Close, left.Destroyed - right.Destroyed, left.Unique - right.Unique);

    public static Cost operator +(Cost left, Cost right) =>
        new(left.Open + right.Open, left.Close + right.Close, left.Destroyed + right.Destroyed, left.Unique + right.Unique);
}

/// <summary>One thing to do.</summary>
public sealed record Step
{
    /// <summary>What becomes true.</summary>
    public required Fact Fact { get; init; }

    /// <summary>The way chosen: a way's identifier; <c>alone</c> or <c>with SUB-ASSEMBLY</c> for a part;
    /// empty where there is one only.</summary>
    public required string Way { get; init; }

    /// <summary>What to do, in words.</summary>
    public required string Says { get; init; }

    public string Tool { get; init; } = "hands";

    public Cost Cost { get; init; } = Cost.Nothing;

    public required string Place { get; init; }

    public required string Posture { get; init; }

    /// <summary>The stance the car is in during this step; null when any will do.</summary>
    public string? Stance { get; init; }

    public ValueList<Fact> Needs { get; init; } = [];

    public ValueList<string> Destroys { get; init; } = [];

    /// <summary>Cautions of the way, of hazards, and the standing warning of unique parts.</summary>
    public ValueList<string> Cautions { get; init; } = [];

    /// <summary>What to hold up before this step, and where; null when nothing.</summary>
    public string? Prop { get; init; }

    /// <summary>Where the minutes come from.</summary>
    public Origin Origin { get; init; }
}

/// <summary>Why there is no plan.</summary>
public sealed record Obstacle
{
    /// <summary>The smallest set of things that, were they allowed, would make a plan possible; each in words with what forbids it.
    /// Empty when nothing that is forbidden is to blame.</summary>
    public ValueList<string> Forbidden { get; init; } = [];

    /// <summary>A small set of facts that wait for each other or have no way, when no permission would help.</summary>
    public ValueList<Fact> Stuck { get; init; } = [];

    /// <summary>Ways with flame, sparks or cutting among those that are stuck, each in words with what burns near it.</summary>
    public ValueList<string> Fire { get; init; } = [];

    /// <summary>Stances among those that are stuck, each in words with what is too weak or off that has to carry the car then.</summary>
    public ValueList<string> Weak { get; init; } = [];

    /// <summary>No smaller set is to blame. That there is no plan at all is always proven.</summary>
    public bool Proven { get; init; }
}
