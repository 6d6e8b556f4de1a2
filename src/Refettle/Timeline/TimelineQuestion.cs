using NodaTime;
using Refettle.Timeline.Network;

namespace Refettle.Timeline;

/// <summary>When is what done, and when is the car finished?</summary>
public sealed record TimelineQuestion
{
    public required Car Car { get; init; }

    /// <summary>The tasks, derived from this car.</summary>
    public required TaskNetwork Network { get; init; }

    /// <summary>The plan behind the tasks; the answer is replayed against it.</summary>
    public required Access.Plan Plan { get; init; }

    public required Instant Now { get; init; }
}
