using NodaTime;

namespace Refettle.Logbook;

/// <summary>The owner adds a task; one of his with the same identifier is replaced. <c>task-added</c></summary>
public sealed record TaskAdded(OwnTask Task) : Happening;

/// <summary>A task of the owner's is taken out. <c>task-removed</c></summary>
public sealed record TaskRemoved(string Task) : Happening;

/// <summary>How long a task takes its owner; null for the derived figure again. <c>task-timed</c></summary>
public sealed record TaskTimed(string Task, Minutes? Takes) : Happening;

/// <summary>A task is split into parts of these minutes; empty makes it whole again. <c>task-split</c></summary>
public sealed record TaskSplit(string Task, ValueList<Minutes> Parts) : Happening;

/// <summary>A task starts then; null sets it free. <c>task-fixed</c></summary>
public sealed record TaskFixed(string Task, LocalDateTime? Start) : Happening;

/// <summary>A task is not worked at on these days. <c>task-forbidden</c></summary>
public sealed record TaskForbidden(string Task, DayRange Days) : Happening;

/// <summary>What a task needs beside what is derived; empty for no more than that. <c>task-equipped</c></summary>
public sealed record TaskEquipped(string Task, ValueList<string> Uses) : Happening;

/// <summary>How far a task is. <c>task-marked</c></summary>
public sealed record TaskMarked(TaskMark Mark) : Happening;

/// <summary>The owner keeps a timeline: later ones are shown against it. <c>timeline-kept</c></summary>
public sealed record TimelineKept(ValueList<KeptTask> Tasks) : Happening;
