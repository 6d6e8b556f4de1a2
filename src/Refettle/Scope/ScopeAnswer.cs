using Refettle.Access;

namespace Refettle.Scope;

/// <summary>The jobs that are worth most within the limits.</summary>
public sealed record ScopeAnswer
{
    public required ScopeQuestion Question { get; init; }

    /// <summary>Optimal: no set of jobs gains more. Impossible: the musts alone do not fit, or nothing was found in
    /// time; the obstacles tell which.</summary>
    public required PlanStatus Status { get; init; }

    /// <summary>Identifiers of the jobs that are in.</summary>
    public ValueList<string> Chosen { get; init; } = [];

    /// <summary>The jobs that are not in, each with the reason.</summary>
    public ValueList<LeftJob> Left { get; init; } = [];

    public ScopeSum Sum { get; init; } = ScopeSum.Nothing;

    /// <summary>Worth less money less time at the owner's rate, in the car's currency.</summary>
    public decimal Gain { get; init; }

    /// <summary>No set of jobs within the limits gains more.</summary>
    public decimal Bound { get; init; }

    /// <summary>What comes off for all of them together.</summary>
    public Plan? Plan { get; init; }

    /// <summary>Why there is no such set, when there is none.</summary>
    public ValueList<string> Obstacles { get; init; } = [];
}

/// <summary>What jobs bring and take, what they share counted once.</summary>
/// <param name="Worth">In the car's currency, points turned into it.</param>
/// <param name="Money">Parts, material, outside work, what opening destroys and uses up.</param>
/// <param name="Opening">Opening and closing again.</param>
/// <param name="Work">The jobs' own work.</param>
/// <param name="Unique">The owner's penalty for taking off unique parts; it counts in the gain, and is no time.</param>
public sealed record ScopeSum(decimal Worth, Money Money, Minutes Opening, Minutes Work, Minutes Unique)
{
    public static ScopeSum Nothing { get; } = new(0, default, default, default, default);

    public Minutes Time => Opening + Work;

    /// <summary>In the car's currency.</summary>
    /// <param name="perHour">Money that an hour is worth.</param>
    public decimal Gain(Money perHour) => Worth - Money.Amount - ((Time + Unique).Value * perHour.Amount / 60);
}

/// <summary>Why a job is not in.</summary>
public enum WhyLeft
{
    /// <summary>It brings less than it takes.</summary>
    NotWorthIt,

    /// <summary>There is no room for it within the limits beside what brings more.</summary>
    NoRoom,

    /// <summary>Its waits alone last beyond the day.</summary>
    WaitsTooLong,

    /// <summary>What has to be opened for it cannot be opened, or a job that it needs is left alone.</summary>
    OutOfReach,

    /// <summary>The question leaves it alone.</summary>
    LeftAlone,
}

/// <summary>A job that is not in.</summary>
public sealed record LeftJob(string Job, WhyLeft Why);
