using NodaTime;

namespace Refettle;

/// <summary>A task that the owner adds to what the program derives.</summary>
public sealed record OwnTask
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    /// <summary>Minutes of work; with <see cref="IsWait"/> minutes on the wall clock.</summary>
    public required Minutes Takes { get; init; }

    /// <summary>Time passes without anybody.</summary>
    public bool IsWait { get; init; }

    /// <summary>From start to finish in one spell.</summary>
    public bool IsUnbroken { get; init; }

    /// <summary>Tasks that are finished before it starts.</summary>
    public ValueList<string> After { get; init; } = [];

    /// <summary>Tasks that start only once it is finished.</summary>
    public ValueList<string> Before { get; init; } = [];

    /// <summary>Facilities it needs, by identifier.</summary>
    public ValueList<string> Uses { get; init; } = [];
}

/// <summary>What the owner sets for a task, whoever thought of it.</summary>
/// <param name="Takes">How long it takes him; null for the derived figure.</param>
/// <param name="Start">When it starts, by the clock on the wall; null when free.</param>
/// <param name="Parts">The minutes of the parts it is split into; empty when whole.</param>
/// <param name="Not">Stretches of days on which it is not worked at.</param>
public sealed record TaskTerms(string Task, Minutes? Takes, LocalDateTime? Start, ValueList<Minutes> Parts, ValueList<DayRange> Not)
{
    /// <summary>Facilities it needs beside what is derived, by identifier; a place has the car there.</summary>
    public ValueList<string> Uses { get; init; } = [];

    public static TaskTerms None(string task) => new(task, null, null, [], []);
}

/// <summary>Days from the first to the last, both included.</summary>
public readonly record struct DayRange(LocalDate First, LocalDate Last);

/// <summary>How far a task is.</summary>
public enum TaskProgress
{
    Ahead,
    Begun,
    Done,
}

/// <summary>How far a task that no fact tells of is, as its owner says.</summary>
/// <param name="At">When it began or was done, by the clock on the wall.</param>
public sealed record TaskMark(string Task, TaskProgress Progress, LocalDateTime At);

/// <summary>When a task was to be done in the timeline that the owner kept, by the clock on the wall.</summary>
public sealed record KeptTask(string Task, LocalDateTime Start, LocalDateTime Finish);
