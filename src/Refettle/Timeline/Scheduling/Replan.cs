namespace Refettle.Timeline.Scheduling;

/// <summary>Something has changed: what does the schedule become, with as little as can be moved?</summary>
/// <param name="Project">As it is now: with what is done or under way, and what is new or changed.</param>
/// <param name="Known">Where each activity of the project started in the schedule before; null for one that is new.</param>
/// <param name="Now">What is still ahead starts then or later.</param>
/// <param name="Day">Length of a day: moves are counted in days, from time 0.</param>
public sealed record ReplanQuestion(Project Project, ValueList<int?> Known, int Now, int Day = 1440)
{
    /// <summary>How much later than the earliest known finish it may finish for the sake of fewer moves,
    /// in parts of what is still ahead.</summary>
    public double Patience { get; init; } = 0.01;
}

/// <summary>A schedule that goes on from another.</summary>
/// <param name="Schedule">Null when none was found: the question is one for the scheduler then, which can tell what clashes.</param>
/// <param name="Bound">No schedule finishes earlier.</param>
/// <param name="DaysMoved">Of all activities together.</param>
/// <param name="Moved">Those that start at another time than before.</param>
public sealed record ReplanAnswer(Schedule? Schedule, int Bound, int DaysMoved, ValueList<int> Moved);
