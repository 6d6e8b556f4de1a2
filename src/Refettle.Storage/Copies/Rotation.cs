namespace Refettle.Storage.Copies;

/// <summary>Which daily copies are kept: every one of the last 7 that there are, then the newest of each of the 5 calendar
/// weeks before (ISO 8601), then the newest of each of the 12 months before.</summary>
public static class Rotation
{
    private const int Days = 7;
    private const int Weeks = 5;
    private const int Months = 12;

    /// <summary>The days whose copies stay.</summary>
    public static IReadOnlySet<DateOnly> Kept(IEnumerable<DateOnly> copies)
    {
        var left = copies.Distinct().OrderDescending().ToList();
        var kept = Take(left, day => day, Days);
        kept.UnionWith(Take(left, Monday, Weeks));
        kept.UnionWith(Take(left, day => new(day.Year, day.Month, 1), Months));
        return kept;
    }

    /// <summary>Takes the newest copy of each of the newest spans out of those that are left, and drops
    /// what else lies in these spans.</summary>
    private static HashSet<DateOnly> Take(List<DateOnly> left, Func<DateOnly, DateOnly> spanOf, int spans)
    {
        var taken = left.GroupBy(spanOf).Take(spans).ToList();
        left.RemoveAll(day => taken.Exists(span => span.Key == spanOf(day)));
        return taken.Select(span => span.First()).ToHashSet();
    }

    private static DateOnly Monday(DateOnly day) => day.AddDays(-(((int)day.DayOfWeek + 6) % 7));
}
