using Refettle.Logbook;

namespace Refettle.SaleFile.Chapters;

/// <summary>What was done, by whom and when; what it took.</summary>
internal static class Work
{
    private const int Most = 6;

    public static Section Days(Sources from)
    {
        var rows = from.WorkDays.Select(day => Day(from, day.Key, [.. day])).ToValueList();
        return new("What was done, day by day",
        [
            new Said(rows.Count == 0 ? "No work is recorded." : "Days are those of the devices' clocks, universal time.", Backing.Explains,
                []),
            .. rows.Count == 0 ? Array.Empty<Block>() : [new Table(["Day", "Done", "By"], rows)],
        ]);
    }

    public static Section Hours(Sources from)
    {
        var timed = from.Entries.Where(entry => entry.IsWork && Sources.Took(entry) is not null).ToList();
        var minutes = timed.Sum(entry => Sources.Took(entry)!.Value.Value);
        var blocks = new List<Block> { timed.Count == 0
            ? new Said("No times were recorded.", Backing.Explains, [])
            : new Said($"{minutes / 60:0.#} hours are recorded, in {Sources.Count(timed.Count, "timed step")}. What was not timed is not in it.", Backing.Recorded, Numbers(timed)) };
        if (from.Privacy.Prices)
            blocks.AddRange(Money(from, minutes));
        return new("Hours and money", blocks.ToValueList());
    }

    private static IEnumerable<Block> Money(Sources from, decimal minutes)
    {
        if (from.InForce<SettingsChosen>().LastOrDefault() is (var entry, { } chosen) && minutes > 0)
            yield return new Said(
                $"At the owner's own rate of {chosen.Settings.PerHour} {from.Car.Currency} an hour that is {minutes / 60 * chosen.Settings.PerHour.Amount:0} {from.Car.Currency}. It is how the owner counts, not a price that was paid.", Backing.Recorded, [entry.Number]);
    }

    private static Row Day(Sources from, DateOnly day, SeenEntry[] entries)
    {
        var done = entries.Select(entry => EntryWords.Of(entry, from.Names)).ToList();
        var by = entries.Select(entry => (entry.Told as JointTightened)?.By).OfType<string>().Distinct().Order(StringComparer.Ordinal);
        var says = done.Count <= Most ? string.Join("; ", done) : $"{string.Join("; ", done.Take(Most))}; and {done.Count - Most} more";
        return new([$"{day:yyyy-MM-dd}", says, string.Join(", ", by)], Numbers(entries));
    }

    private static ValueList<int> Numbers(IEnumerable<SeenEntry> entries) => entries.Select(entry => entry.Number).ToValueList();
}
