namespace Refettle.Stuck;

/// <summary>One try on a ladder.</summary>
public sealed record Rung
{
    public required string Id { get; init; }

    /// <summary>What to do, in words.</summary>
    public required string Says { get; init; }

    public string Tool { get; init; } = "hands";

    /// <summary>Working minutes of one try.</summary>
    public Minutes Takes { get; init; }

    /// <summary>Minutes that then pass on the clock without anybody (a soak).</summary>
    public Minutes Waits { get; init; }

    /// <summary>The chance that it frees the joint at seizure levels 0 to 4: five values from 0 to 1. All 1 makes a sure way.</summary>
    public required ValueList<double> Odds { get; init; }

    /// <summary>The same once the joint has soaked; null when a soak changes nothing.</summary>
    public ValueList<double>? OddsSoaked { get; init; }

    /// <summary>What it may do to the joint instead. With <see cref="Odds"/> the chances of a level add up to
    /// at most 1; the rest is "held".</summary>
    public ValueList<Mishap> Mishaps { get; init; } = [];

    /// <summary>Counts as a soak for what follows.</summary>
    public bool IsSoak { get; init; }

    public Danger Danger { get; init; }

    /// <summary>What it destroys and so must be in hand before it: <c>nut</c>, <c>bush</c>.</summary>
    public ValueList<string> Destroys { get; init; } = [];

    /// <summary>Money for what it destroys or uses up each time, in the car's currency.</summary>
    public Money Spends { get; init; }

    public ValueList<string> Cautions { get; init; } = [];

    public bool IsSure => Odds.All(odds => odds >= 1);

    /// <summary>The chance that it frees a joint of a level.</summary>
    public double OddsAt(int level, bool isSoaked) => (isSoaked ? OddsSoaked ?? Odds : Odds)[level];

    /// <summary>The chance that a joint of a level is afterwards as it was before.</summary>
    public double HoldsAt(int level, bool isSoaked) => 1 - OddsAt(level, isSoaked) - Mishaps.Sum(mishap => mishap.Odds[level]);
}

/// <summary>A try that goes wrong.</summary>
/// <param name="Becomes">What the joint is then; it goes on on the ladder for that.</param>
/// <param name="Odds">The chance at seizure levels 0 to 4.</param>
public sealed record Mishap(JointCondition Becomes, ValueList<double> Odds)
{
    /// <summary>Whether it can happen at any level.</summary>
    internal bool CanHappen => Odds.Any(odds => odds > 0);
}

/// <summary>The tries for joints of some kinds in one condition, mildest first; the last is sure.</summary>
public sealed record Ladder
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    /// <summary>The kinds of joint it is for; empty for any.</summary>
    public ValueList<JointKind> Kinds { get; init; } = [];

    public JointCondition Condition { get; init; }

    public required ValueList<Rung> Rungs { get; init; }

    /// <summary>Where minutes and chances come from.</summary>
    public required string Origin { get; init; }
}
