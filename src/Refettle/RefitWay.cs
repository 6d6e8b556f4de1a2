namespace Refettle;

/// <summary>How a joint is closed, or a part put in, where that is not its way open or out turned round.</summary>
/// <remarks>It goes back in the stance that it came apart in: a refit way names none.</remarks>
public sealed record RefitWay
{
    /// <summary>The tool or helper that decides the method; <c>hands</c> when none.</summary>
    public required string Tool { get; init; }

    /// <summary>Minutes to close all of the joint, or to put the part in, in place of those of the way open or out.</summary>
    public required Minutes Takes { get; init; }

    /// <summary>What must still be off, open or brought about then, in place of what the way open or out asks for.</summary>
    public ValueList<Fact> Clear { get; init; } = [];

    /// <summary><c>standing</c>, <c>under</c>, <c>inside</c> …; null takes the zone's.</summary>
    public string? Posture { get; init; }

    public ValueList<string> Cautions { get; init; } = [];

    /// <summary>What it can set alight beyond what its tool's words say: it only adds to them; null when nothing is said.</summary>
    public Danger? Danger { get; init; }

    public Origin Origin { get; init; }
}
