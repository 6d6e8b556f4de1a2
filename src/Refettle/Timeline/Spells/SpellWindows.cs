using NodaTime;

namespace Refettle.Timeline.Spells;

/// <summary>Turns spells, days and climate into windows of minutes.</summary>
public static class SpellWindows
{
    /// <summary>The windows of spells from minute 0 to the end of a day: in order, apart, those that touch or overlap made one.</summary>
    public static ValueList<Window> Of(IEnumerable<Spell> spells, WallClock clock, LocalDate last) =>
        Stretches.Joined(spells.SelectMany(spell => SpellDays.Of(spell, last).Select(day => On(day, spell, clock))), 0, End(last, clock));

    /// <summary>The days from first to last, whole, as far as they lie ahead; null is open on that end.</summary>
    public static ValueList<Window> Days(LocalDate? first, LocalDate? last, WallClock clock, LocalDate horizon)
    {
        var from = first is { } day ? clock.Minute(day.AtMidnight()) : 0;
        var end = End(last is { } known && known < horizon ? known : horizon, clock);
        return Stretches.Joined([new(from, end)], 0, end);
    }

    /// <summary>The first minute after a day.</summary>
    public static int End(LocalDate day, WallClock clock) => clock.Minute(day.PlusDays(1).AtMidnight());

    private static Window On(LocalDate day, Spell spell, WallClock clock)
    {
        var last = spell.Until <= spell.From ? day.PlusDays(1) : day;
        return new(clock.Minute(day + spell.From), clock.Minute(last + spell.Until));
    }
}
