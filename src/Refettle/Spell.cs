using NodaTime;

namespace Refettle;

/// <summary>A stretch of time the owner expects to be in the garage, once or again and again, by the clock on the wall there.</summary>
public sealed record Spell
{
    public required string Id { get; init; }

    /// <summary>Whose it is: the identifier of a helper, a lift or a tool; null for the owner's own time.</summary>
    public string? Whose { get; init; }

    /// <summary>No spell before this day.</summary>
    public required LocalDate First { get; init; }

    public required LocalTime From { get; init; }

    /// <summary>At or before <see cref="From"/> it ends on the next day.</summary>
    public required LocalTime Until { get; init; }

    /// <summary>Null for once.</summary>
    public Repetition? Repeats { get; init; }

    /// <summary>Days on which it does not take place. They count among <see cref="Repetition.Count"/>, as in a calendar file.</summary>
    public ValueList<LocalDate> Except { get; init; } = [];
}

/// <summary>How often a spell comes again.</summary>
/// <param name="Interval">Every so many days or weeks, 1 or more. Weeks begin on Monday.</param>
/// <param name="Days">Days of the week, for weekly spells; empty for the weekday of the first.</param>
/// <param name="Until">The last day that may have one; null for no end.</param>
/// <param name="Count">So many in all; null for no limit.</param>
public sealed record Repetition(Rhythm Rhythm, int Interval, ValueList<IsoDayOfWeek> Days, LocalDate? Until = null, int? Count = null);

public enum Rhythm
{
    Daily,
    Weekly,
}
