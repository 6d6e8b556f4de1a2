namespace Refettle;

/// <summary>Whether the tool of a try gets at a joint.</summary>
/// <param name="Rung">The rung of the ladder.</param>
/// <param name="Reaches">It reaches, with the car as it is.</param>
/// <param name="Once">When it does not: what has to be true for it to reach; empty when nothing helps.</param>
public sealed record ToolReach(string Joint, string Rung, bool Reaches, ValueList<Fact> Once);

/// <summary>A joint that soaks.</summary>
public sealed record Soaking(string Joint, string Rung, DateTimeOffset Since);

/// <summary>The owner's leave to try without having in hand what it destroys.</summary>
public sealed record LeaveForMissing(string Joint, string Rung, string Why);
