namespace Refettle.Access.Derivation;

/// <summary>A way of the derivation problem in the words of the car.</summary>
/// <param name="Fact">What becomes true.</param>
/// <param name="Name">The way's name in a plan: its identifier, <c>alone</c>, <c>with UNIT</c>, or empty.</param>
/// <param name="Cost">What it takes.</param>
/// <param name="Needs">What must be true first and is not yet.</param>
/// <param name="Way">The joint's or state's way; null for parts and spaces.</param>
internal sealed record WaySource(Fact Fact, string Name, Cost Cost, IReadOnlyList<Fact> Needs, Way? Way)
{
    /// <summary>The stance the car must be in meanwhile, whether it is now or not; null when any will do.</summary>
    public string? Stance { get; init; }

    /// <summary>Everything the owner forbids about it, in words; empty when it is allowed.</summary>
    public IReadOnlyList<string> Forbidden { get; init; } = [];

    /// <summary>The unique parts that leave the car by it: the owner's penalty for each comes on top, once in a plan.</summary>
    public IReadOnlyList<string> Uniques { get; init; } = [];

    public bool IsAllowed => Forbidden.Count == 0;
}
