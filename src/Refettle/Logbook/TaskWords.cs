namespace Refettle.Logbook;

/// <summary>What the owner adds to the timeline and sets for a task, in a line.</summary>
public static class TaskWords
{
    /// <summary>A task of his own: <c>Polish, 50 min, in one go, after strip.tank, uses yard</c>.</summary>
    /// <param name="name">What to call another task.</param>
    /// <param name="facility">What to call a facility; by default its identifier.</param>
    public static string Of(OwnTask task, Func<string, string> name, Func<string, string>? facility = null) => string.Join(", ", new[]
    {
        task.Name,
        $"{task.Takes}{(task.IsWait ? " that pass by themselves" : task.IsUnbroken ? " in one go" : "")}",
        task.After.Count == 0 ? null : $"after {Named(task.After, name)}",
        task.Before.Count == 0 ? null : $"before {Named(task.Before, name)}",
        task.Uses.Count == 0 ? null : $"uses {Named(task.Uses, facility ?? Itself)}",
    }.OfType<string>());

    /// <summary>What is set for a task: <c>takes 50 min, not from Mon 2027-01-04 to Tue 2027-01-05</c>.</summary>
    public static string Of(TaskTerms terms, Func<string, string>? facility = null) => string.Join(", ", new[]
    {
        terms.Takes is { } takes ? $"takes {takes}" : null,
        terms.Start is { } start ? $"starts {DayWords.Moment(start)}" : null,
        terms.Parts.Count == 0 ? null : $"in parts of {string.Join(" + ", terms.Parts)}",
        terms.Not.Count == 0 ? null : $"not {string.Join(", ", terms.Not.Select(Days))}",
        terms.Uses.Count == 0 ? null : $"also needs {Named(terms.Uses, facility ?? Itself)}",
    }.OfType<string>());

    private static string Days(DayRange days) =>
        days.First == days.Last ? $"on {DayWords.Day(days.First)}" : $"from {DayWords.Day(days.First)} to {DayWords.Day(days.Last)}";

    private static string Itself(string id) => id;

    private static string Named(IEnumerable<string> tasks, Func<string, string> name) => string.Join(", ", tasks.Select(name));
}
