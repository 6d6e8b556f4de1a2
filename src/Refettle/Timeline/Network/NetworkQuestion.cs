using Refettle.Access;
using Refettle.Stuck;

namespace Refettle.Timeline.Network;

/// <summary>What is to be done to a car, for the tasks to be derived from.</summary>
public sealed record NetworkQuestion
{
    public required Car Car { get; init; }

    /// <summary>Reaches all goals, those of the jobs too; a valid plan for this car.</summary>
    public required Plan Plan { get; init; }

    /// <summary>The jobs that are to be done.</summary>
    public ValueList<Job> Jobs { get; init; } = [];

    /// <summary>How what the work takes stands; null while the shelf is not asked: then all of it is
    /// ordered and takes the default.</summary>
    public PartsAhead? Parts { get; init; }

    /// <summary>When moves of the car can be made, where that is known: the time before is used.</summary>
    public ValueList<MoveDue> Moves { get; init; } = [];

    /// <summary>Without any, no joint is taken to be stuck.</summary>
    public LadderSet Ladders { get; init; } = new([]);
}
