using Refettle.Stuck;

namespace Refettle.Judging;

/// <summary>What should be done with parts.</summary>
public sealed record VerdictQuestion
{
    /// <summary>The parts to judge; empty for all of which something was found or decided.</summary>
    public ValueList<string> Parts { get; init; } = [];

    /// <summary>What will be done anyway: what that opens costs nothing more.</summary>
    public ValueList<Fact> Planned { get; init; } = [];

    /// <summary>Days until the date to meet; null when there is none.</summary>
    public decimal? DaysLeft { get; init; }

    /// <summary>Ladders, to judge what removal may break; null leaves that out.</summary>
    public LadderSet? Ladders { get; init; }
}
