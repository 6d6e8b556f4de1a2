using NodaTime;
using Refettle.Timeline.Network;
using Refettle.Timeline.Scheduling;

namespace Refettle.Timeline;

/// <summary>What is done when. All times are by the clock on the wall.</summary>
public sealed record TimelineAnswer
{
    /// <summary>The minute that counting begins with.</summary>
    public required LocalDateTime Begin { get; init; }

    /// <summary>Where the clock hangs.</summary>
    public required string TimeZone { get; init; }

    public required ScheduleStatus Status { get; init; }

    /// <summary>Every task, in the order of the starts; empty without a schedule.</summary>
    public ValueList<PlannedTask> Tasks { get; init; } = [];

    /// <summary>When the last task ends; null without a schedule.</summary>
    public LocalDateTime? Finish { get; init; }

    /// <summary>No order of these tasks ends earlier, with these spells.</summary>
    public LocalDateTime? Bound { get; init; }

    /// <summary>The date to meet; null when there is none.</summary>
    public LocalDateTime? Date { get; init; }

    /// <summary>The owner's time in the garage, as far as it is entered and counted on.</summary>
    public ValueList<PlannedWindow> Spells { get; init; } = [];

    /// <summary>The last day for which a spell is entered; later ones are assumed in the same
    /// rhythm. Null where they have no end.</summary>
    public LocalDate? LastEntered { get; init; }

    /// <summary>What cannot be kept together, in words; leave out any one of them and the rest can.</summary>
    public ValueList<string> Clashes { get; init; } = [];

    /// <summary>What became of the timeline that was kept, in words.</summary>
    public ValueList<TaskChange> Changes { get; init; } = [];

    /// <summary>What was assumed, and what could not be planned.</summary>
    public ValueList<Fault> Notes { get; init; } = [];

    /// <summary>It ends in time for the date; null without a date or a schedule.</summary>
    public bool? IsInTime => Date is { } date && Finish is { } finish ? finish <= date : null;

    /// <summary>It counts on spells that nobody has entered.</summary>
    public bool CountsOnMore =>
        LastEntered is { } last && Tasks.Any(task => !task.Task.IsWait && task.Task.Takes > Minutes.Zero && task.Finish.Date > last);
}

/// <summary>A task in its place.</summary>
/// <param name="IsCritical">Every day that it takes longer, or its spell fails, the finish is later, as far as this order goes.</param>
/// <param name="Pieces">When it is worked at, or time passes, without the pauses between spells.</param>
public sealed record PlannedTask(
    WorkTask Task, LocalDateTime Start, LocalDateTime Finish, bool IsCritical, ValueList<PlannedWindow> Pieces);

public readonly record struct PlannedWindow(LocalDateTime Start, LocalDateTime End);

/// <summary>A task that is on another day than in the kept timeline, new, or gone.</summary>
/// <param name="Was">When it was to start; null for a new one.</param>
/// <param name="Now">When it starts now; null for one that is gone or done.</param>
public sealed record TaskChange(string Task, string Says, LocalDateTime? Was, LocalDateTime? Now);
