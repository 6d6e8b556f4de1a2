using NodaTime;

namespace Refettle.Timeline.Spells;

/// <summary>The days on which a spell begins, after the recurrence rules of iCalendar (RFC 5545 §3.3.10, weeks from Monday).</summary>
public static class SpellDays
{
    /// <summary>In order, none after <paramref name="last"/>.</summary>
    public static IEnumerable<LocalDate> Of(Spell spell, LocalDate last) =>
        Planned(spell, last).Where(day => !spell.Except.Contains(day));

    /// <summary>Also the days on which it does not take place.</summary>
    private static IEnumerable<LocalDate> Planned(Spell spell, LocalDate last)
    {
        var again = spell.Repeats ?? new(Rhythm.Daily, 1, [], Count: 1);
        var end = again.Until is { } until && until < last ? until : last;
        var days = again.Rhythm == Rhythm.Daily ? Daily(spell.First, again.Interval) : Weekly(spell.First, again);
        return days.Take(again.Count ?? int.MaxValue).TakeWhile(day => day <= end);
    }

    private static IEnumerable<LocalDate> Daily(LocalDate first, int interval)
    {
        for (var day = first; ; day = day.PlusDays(interval))
            yield return day;
    }

    private static IEnumerable<LocalDate> Weekly(LocalDate first, Repetition again)
    {
        var days = again.Days.Count == 0 ? [first.DayOfWeek] : again.Days.Distinct().Order().ToArray();
        var monday = first.PlusDays(1 - (int)first.DayOfWeek);
        for (var week = monday; ; week = week.PlusWeeks(again.Interval))
        {
            foreach (var day in days.Select(weekday => week.PlusDays((int)weekday - 1)).Where(day => day >= first))
                yield return day;
        }
    }
}
