using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;
using NodaTime;
using NodaTime.Extensions;
using Refettle.Timeline.Spells;

namespace Refettle.Sheets.Calendars;

/// <summary>Writes spells as an iCalendar file (RFC 5545).</summary>
public static class SpellsWriter
{
    private const string Product = "-//Refettle//Spells//EN";

    /// <summary>One event a spell, with its rule and exceptions; a spell without any day is left out.</summary>
    public static string Write(CarCalendar calendar)
    {
        var file = new Ical.Net.Calendar { ProductId = Product };
        var zone = calendar.TimeZone ?? "UTC";
        foreach (var spell in calendar.Spells)
        {
            if (Event(spell, zone) is { } written)
                file.Events.Add(written);
        }

        return new CalendarSerializer().SerializeToString(file) ?? "";
    }

    private static CalendarEvent? Event(Spell spell, string zone)
    {
        // The first event of a file must fit its own rule (RFC 5545 §3.8.5.3), so that it is the first day that the rule gives.
        var planned = spell with { Except = [] };
        var first = SpellDays.Of(planned, LocalDate.MaxIsoValue).Select(day => (LocalDate?)day).FirstOrDefault();
        if (first is not { } day)
            return null;
        var written = new CalendarEvent
        {
            Uid = spell.Id,
            Summary = spell.Whose is null ? "In the garage" : $"In the garage: {spell.Whose}",
            Start = At(day, spell.From, zone),
            End = At(spell.Until <= spell.From ? day.PlusDays(1) : day, spell.Until, zone),
        };
        if (spell.Whose is not null)
            written.Categories.Add(spell.Whose);
        if (spell.Repeats is { } again)
            written.RecurrenceRule = Rule(again, spell, zone);
        written.ExceptionDates.AddRange(spell.Except.Select(missed => At(missed, spell.From, zone)));
        return written;
    }

    private static RecurrenceRule Rule(Repetition again, Spell spell, string zone) => new(
        again.Rhythm == Rhythm.Daily ? FrequencyType.Daily : FrequencyType.Weekly, again.Interval)
    {
        ByDay = [.. again.Days.Distinct().Order().Select(day => new WeekDay(day.ToDayOfWeek()))],
        FirstDayOfWeek = DayOfWeek.Monday,
        Count = again.Until is null ? again.Count : null,
        Until = Last(again, spell) is { } last ? At(last, spell.From, zone).ToTimeZone("UTC") : null,
    };

    /// <summary>A rule has an end or a count, not both (RFC 5545 §3.3.10): with both, the earlier end is written.</summary>
    private static LocalDate? Last(Repetition again, Spell spell) => again.Until is not { } until ? null
        : again.Count is null ? until
        : SpellDays.Of(spell with { Except = [] }, until).LastOrDefault(until);

    private static CalDateTime At(LocalDate day, LocalTime time, string zone) =>
        new(day.Year, day.Month, day.Day, time.Hour, time.Minute, time.Second, zone);
}
