using NodaTime;
using Refettle.Scope;

namespace Refettle.Timeline.Spells;

/// <summary>Puts the calendar into a question about the scope: the days until the date to meet, and the
/// owner's time in spells until then.</summary>
public static class ScopeDays
{
    /// <summary>The question that a car's means and calendar ask. Spells that end before the day are taken to go
    /// on, as the timeline takes them.</summary>
    /// <param name="by">The day to meet; null takes the car's.</param>
    public static ScopeQuestion Question(Car car, Instant now, LocalDate? by = null)
    {
        var clock = WallClock.Of(car.Calendar, now);
        var last = by ?? (car.Due() is { } day ? LocalDate.FromDateOnly(day) : null);
        return ScopeQuestion.Of(car, clock.Today.ToDateOnly()) with
        {
            Until = last is { } date ? new(Math.Max(0, Period.DaysBetween(clock.Today, date)), Time(car.Calendar, clock, date)) : null,
        };
    }

    private static Minutes? Time(CarCalendar calendar, WallClock clock, LocalDate last)
    {
        var own = calendar.Spells.Where(spell => spell.Whose is null).ToList();
        if (own.Count == 0)
            return null;
        if (last < clock.Today)
            return Minutes.Zero;
        // On the day of the handover what comes after its hour is too late.
        var end = calendar.Handover is { By: var by } && by.Date == last ? Math.Max(0, clock.Minute(by)) : SpellWindows.End(last, clock);
        return new(Stretches.Joined(SpellWindows.Of(SpellsToCome.Until(own, last).Spells, clock, last), 0, end)
            .Sum(window => window.End - window.Start));
    }
}
