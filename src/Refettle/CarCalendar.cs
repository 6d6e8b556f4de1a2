using NodaTime;

namespace Refettle;

/// <summary>When there is time, with what, in which air, and what the owner sets for the timeline.</summary>
public sealed record CarCalendar
{
    public static CarCalendar Empty { get; } = new();

    /// <summary>A name of the time-zone database, such as <c>Europe/Berlin</c>; null while nobody
    /// has said, and then times are UTC.</summary>
    public string? TimeZone { get; init; }

    public ValueList<Spell> Spells { get; init; } = [];

    /// <summary>The date to meet; null when there is none.</summary>
    public Handover? Handover { get; init; }

    public ValueList<Facility> Facilities { get; init; } = [];

    /// <summary>At most one of each month.</summary>
    public ValueList<ClimateMonth> Climate { get; init; } = [];

    /// <summary>At most one of each day.</summary>
    public ValueList<ClimateReading> Readings { get; init; } = [];

    public ValueList<OwnTask> Tasks { get; init; } = [];

    public ValueList<TaskTerms> Terms { get; init; } = [];

    public ValueList<TaskMark> Marks { get; init; } = [];

    /// <summary>The timeline that was last kept; empty when none was.</summary>
    public ValueList<KeptTask> Kept { get; init; } = [];

    /// <summary>What a task of the owner's is called; of any other its identifier.</summary>
    public string NameOfTask(string task) => Tasks.FirstOrDefault(one => one.Id == task)?.Name ?? task;

    /// <summary>What a facility is called; its identifier where it is not there any more.</summary>
    public string NameOf(string facility) => Facilities.FirstOrDefault(one => one.Id == facility)?.Name ?? facility;
}

/// <summary>The date to meet.</summary>
/// <param name="By">By the clock on the wall.</param>
/// <param name="What">What happens then, in words.</param>
public sealed record Handover(LocalDateTime By, string What);
