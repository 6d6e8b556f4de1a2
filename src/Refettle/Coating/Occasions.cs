using NodaTime;
using Refettle.Timeline.Spells;

namespace Refettle.Coating;

/// <summary>A time at which coats can be put on.</summary>
/// <param name="Air">As read or expected on that day; null when nothing is known.</param>
public sealed record Occasion(LocalDateTime At, OccasionAir? Air)
{
    /// <summary>A long spell holds several: one can begin again after so many minutes.</summary>
    private const int StepMinutes = 120;

    private static readonly LocalTime _morning = new(10, 0);

    /// <summary>The occasions of the owner's spells; without spells one a day at ten.</summary>
    public static ValueList<Occasion> Of(CarCalendar calendar, LocalDateTime from, int days)
    {
        var last = from.Date.PlusDays(days);
        var own = calendar.Spells.Where(spell => spell.Whose is null).ToList();
        var times = own.Count == 0
            ? Enumerable.Range(0, days + 1).Select(one => from.Date.PlusDays(one) + _morning)
            : SpellsToCome.Until(own, last).Spells.SelectMany(spell => SpellDays.Of(spell, last).SelectMany(begin => Within(spell, begin)));
        return times.Where(time => time >= from).Distinct().Order().Select(time => new Occasion(time, AirOn(calendar, time.Date)))
            .ToValueList();
    }

    public static OccasionAir? AirOn(CarCalendar calendar, LocalDate day) =>
        CoatingDays.Air(calendar, day) is var (celsius, humidity) ? new(celsius, humidity) : null;

    private static IEnumerable<LocalDateTime> Within(Spell spell, LocalDate day)
    {
        var end = (spell.Until <= spell.From ? day.PlusDays(1) : day) + spell.Until;
        for (var time = day + spell.From; time == day + spell.From
            || time.PlusMinutes(StepMinutes) <= end; time = time.PlusMinutes(StepMinutes))
            yield return time;
    }
}

/// <summary>Air on a day.</summary>
public sealed record OccasionAir(decimal Celsius, decimal HumidityPercent);
