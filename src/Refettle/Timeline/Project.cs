namespace Refettle.Timeline;

/// <summary>What is to be scheduled: activities, the resources they need, and the lags between them. Times are whole minutes from the
/// project's begin; published instances count in their own unit.</summary>
/// <param name="Activities">Known to lags by their place in this list, from 0.</param>
/// <param name="Resources">Known to demands by their place in this list, from 0.</param>
public sealed record Project(ValueList<Activity> Activities, ValueList<Resource> Resources, ValueList<Lag> Lags);

/// <summary>How an activity spends its duration.</summary>
public enum Pace
{
    /// <summary>By the clock on the wall: a cure, a soak, a delivery.</summary>
    WallClock,

    /// <summary>Only while all its resources are open, from its first minute on; it pauses between their
    /// windows and goes on in the next.</summary>
    Pausing,

    /// <summary>Inside one window of its resources, from start to finish.</summary>
    Unbroken,
}

/// <summary>One thing to do or to wait for. With a duration of 0 it happens at any moment and holds nothing.</summary>
/// <param name="Duration">0 or more; for <see cref="Pace.Pausing"/> the time worked, without pauses.</param>
/// <param name="Demands">Units of each resource that it holds from start to finish, pauses included; one
/// for each resource of the project.</param>
/// <param name="Earliest">It starts then or later.</param>
/// <param name="LatestFinish">It is finished then or earlier; null when nothing presses.</param>
/// <param name="FixedStart">It starts exactly then, as somebody has settled; null when free.</param>
/// <param name="Done">From when to when it was done, or, once begun, when it began and is expected to
/// end; null when still ahead. What is done is not asked about its duration, windows and lags any more; what is ahead still keeps its lags
/// to it and leaves it its resources.</param>
public sealed record Activity(
    string Id, int Duration, ValueList<int> Demands, Pace Pace = Pace.WallClock, int Earliest = 0, int? LatestFinish = null,
    int? FixedStart = null, Window? Done = null);

/// <summary>Something of which there is only so much at a time: the person, the bench, the spray corner, the car's stance.</summary>
/// <param name="Capacity">Units there are, 0 or more.</param>
/// <param name="Open">When it can be worked with, in order, apart from each other; null when always.</param>
public sealed record Resource(string Id, int Capacity, ValueList<Window>? Open = null);

/// <summary>A stretch of time: from <paramref name="Start"/> up to, not including, <paramref name="End"/>.</summary>
public readonly record struct Window(int Start, int End);

/// <summary>From which end of the activity before a lag is counted.</summary>
public enum Anchor
{
    Start,
    Finish,
}

/// <summary>The start of one activity is held to a time after another's start or finish.</summary>
/// <param name="Before">Place of the activity that is counted from.</param>
/// <param name="After">Place of the activity whose start is held.</param>
/// <param name="Least">It starts this much later or more; below 0 it may start earlier.</param>
/// <param name="Most">It starts this much later or less, as a recoat window ends; null when there is no such end.</param>
public sealed record Lag(int Before, int After, int Least = 0, int? Most = null, Anchor Anchor = Anchor.Finish);

/// <summary>When each activity of a project starts and finishes, in the project's order and time.</summary>
public sealed record Schedule(ValueList<int> Starts, ValueList<int> Finishes)
{
    /// <summary>The last finish; 0 for an empty project.</summary>
    public int Makespan => Finishes.Count == 0 ? 0 : Finishes.Max();
}
