using NodaTime;

namespace Refettle.Timeline.Spells;

/// <summary>Turns spells, days and climate into windows of minutes.</summary>
public static class SpellWindows
{
    /// <summary>The windows of spells from minute 0 to the end of a day: in order, apart, those that touch or overlap made one.</summary>
    public static ValueList<Window> Of(IEnumerable<Spell> spells, WallClock clock, LocalDate last) =>
        Joined(spells.SelectMany(spell => SpellDays.Of(spell, last).Select(day => On(day, spell, clock))), 0, End(last, clock));

    /// <summary>The days from first to last, whole, as far as they lie ahead; null is open on that end.</summary>
    public static ValueList<Window> Days(LocalDate? first, LocalDate? last, WallClock clock, LocalDate horizon)
    {
        var from = first is { } day ? clock.Minute(day.AtMidnight()) : 0;
        var end = End(last is { } known && known < horizon ? known : horizon, clock);
        return Joined([new(from, end)], 0, end);
    }

    /// <summary>The minutes that lie in both.</summary>
    public static ValueList<Window> Both(ValueList<Window> one, ValueList<Window> other)
    {
        var both = new List<Window>();
        for (int i = 0, j = 0; i < one.Count && j < other.Count;)
        {
            var (start, end) = (Math.Max(one[i].Start, other[j].Start), Math.Min(one[i].End, other[j].End));
            if (start < end)
                both.Add(new(start, end));
            _ = one[i].End <= other[j].End ? i++ : j++;
        }

        return both.ToValueList();
    }

    /// <summary>The minutes from 0 to <paramref name="end"/> that lie in none of the windows, which are in order and apart.</summary>
    public static ValueList<Window> Without(ValueList<Window> windows, int end)
    {
        var starts = windows.Select(window => window.End).Prepend(0);
        var ends = windows.Select(window => window.Start).Append(end);
        return Joined(starts.Zip(ends, (start, stop) => new Window(start, stop)), 0, end);
    }

    /// <summary>In order and apart, cut to a stretch.</summary>
    public static ValueList<Window> Joined(IEnumerable<Window> windows, int from, int until)
    {
        var joined = new List<Window>();
        foreach (var window in windows.Select(window => new Window(Math.Max(from, window.Start), Math.Min(until, window.End)))
            .Where(window => window.Start < window.End).OrderBy(window => window.Start))
        {
            if (joined.Count > 0 && window.Start <= joined[^1].End)
                joined[^1] = new(joined[^1].Start, Math.Max(joined[^1].End, window.End));
            else
                joined.Add(window);
        }

        return joined.ToValueList();
    }

    /// <summary>The first minute after a day.</summary>
    public static int End(LocalDate day, WallClock clock) => clock.Minute(day.PlusDays(1).AtMidnight());

    private static Window On(LocalDate day, Spell spell, WallClock clock)
    {
        var last = spell.Until <= spell.From ? day.PlusDays(1) : day;
        return new(clock.Minute(day + spell.From), clock.Minute(last + spell.Until));
    }
}
