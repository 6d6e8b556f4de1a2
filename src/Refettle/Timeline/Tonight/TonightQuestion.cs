using NodaTime;
using Refettle.Timeline.Network;

namespace Refettle.Timeline.Tonight;

/// <summary>How much somebody has left in him.</summary>
public enum Energy
{
    Low,
    Usual,
}

/// <summary>There is so much time now: what can be finished in it?</summary>
public sealed record TonightQuestion
{
    public required Car Car { get; init; }

    /// <summary>The tasks, derived from this car.</summary>
    public required TaskNetwork Network { get; init; }

    public required Instant Now { get; init; }

    /// <summary>More than 0.</summary>
    public required Minutes Minutes { get; init; }

    public Energy Energy { get; init; } = Energy.Usual;

    /// <summary>Nothing that dirties hands and clothes.</summary>
    public bool KeepClean { get; init; }

    /// <summary>A second pair of hands is here.</summary>
    public bool HasHelper { get; init; }

    /// <summary>Tasks that hold up the finish, as the last timeline found; they come first. Empty when none is known.</summary>
    public ValueList<string> Critical { get; init; } = [];
}
