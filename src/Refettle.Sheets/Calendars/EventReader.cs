using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using NodaTime;
using NodaTime.Extensions;

namespace Refettle.Sheets.Calendars;

/// <summary>Reads one event of a calendar file as a spell.</summary>
internal static class EventReader
{
    /// <param name="number">Its place in the file, from 1.</param>
    /// <param name="zone">The clock on the wall; null for UTC.</param>
    public static Result<Spell> Read(CalendarEvent one, int number, string? zone)
    {
        var place = $"event {number}{(string.IsNullOrWhiteSpace(one.Summary) ? "" : $" ({one.Summary})")}";
        var faults = Faults(one, zone).Select(fault => new Fault(place, fault.Found, fault.Mend)).ToList();
        if (faults.Count > 0)
            return Result<Spell>.Bad(faults);
        var start = Local(one.Start!, zone);
        var end = Local(one.Start!.Add(one.EffectiveDuration), zone);
        if (end <= start || end > start.PlusDays(1))
            return Result<Spell>.Bad(new Fault(place, $"it lasts from {start} to {end}", "Give an end within a day after its start."));
        return Result<Spell>.Good(new()
        {
            Id = Name(one, number),
            Whose = one.Categories.FirstOrDefault(Identifier.IsValid),
            First = start.Date,
            From = start.TimeOfDay,
            Until = end.TimeOfDay,
            Repeats = one.RecurrenceRule is { } rule ? Rule(rule, start.TimeOfDay, zone) : null,
            Except = one.ExceptionDates.GetAllDates().Select(day => Local(day, zone).Date).Distinct().Order().ToValueList(),
        });
    }

    private static IEnumerable<(string Found, string Mend)> Faults(CalendarEvent one, string? zone)
    {
        if (one.Start is null || !one.Start.HasTime)
        {
            yield return ("it has no time of day", "Give it a start and an end by the clock.");
            yield break;
        }

        if (UnknownZone(one) is { } unknown)
        {
            yield return ($"its time zone \"{unknown}\" is not in the time-zone database", "Export it with a name such as Europe/Berlin.");
            yield break;
        }

        if (one.RecurrenceDates.GetAllDates().Any())
            yield return ("it lists further dates (RDATE)", "Make them events of their own.");
        if (one.RecurrenceIdentifier is not null)
            yield return ("it moves one day of another event", "Take it out and enter that day by hand.");
        if (one.RecurrenceRule is not { } rule)
            yield break;
        if (one.Start.TzId is { } own && zone is not null && own != zone)
            yield return ($"it repeats in {own}, and the clock on the wall is {zone}",
                "Export it in that time zone: summer time begins elsewhere on other days.");
        if (rule.Frequency is not (FrequencyType.Daily or FrequencyType.Weekly))
            yield return ($"it repeats {rule.Frequency.ToString().ToLowerInvariant()}", "Give daily or weekly events, or single ones.");
        if (IsNarrowed(rule))
            yield return ("its rule has more than days of the week", "Give daily events, or weekly ones with days of the week.");
        if (rule is { Frequency: FrequencyType.Weekly, Interval: > 1 } && rule.FirstDayOfWeek != DayOfWeek.Monday)
            yield return ("its weeks do not begin on Monday", "Export it with weeks from Monday (WKST=MO).");
    }

    private static string? UnknownZone(CalendarEvent one) => one.ExceptionDates.GetAllDates().Append(one.Start).Append(one.End)
        .Select(time => time?.TzId)
        .FirstOrDefault(zone => zone is not (null or "UTC") && DateTimeZoneProviders.Tzdb.GetZoneOrNull(zone) is null);

    private static bool IsNarrowed(RecurrenceRule rule) =>
        rule.ByMonth.Count + rule.ByMonthDay.Count + rule.ByYearDay.Count + rule.ByWeekNo.Count + rule.BySetPosition.Count
        + rule.ByHour.Count + rule.ByMinute.Count + rule.BySecond.Count > 0
        || rule.ByDay.Any(day => day.Offset is not null)
        || (rule.Frequency == FrequencyType.Daily && rule.ByDay.Count > 0);

    private static Repetition Rule(RecurrenceRule rule, LocalTime from, string? zone) => new(
        rule.Frequency == FrequencyType.Daily ? Rhythm.Daily : Rhythm.Weekly,
        rule.Interval,
        rule.ByDay.Select(day => day.DayOfWeek.ToIsoDayOfWeek()).Distinct().Order().ToValueList(),
        rule.Until is { } until ? LastDay(until, from, zone) : null,
        rule.Count);

    /// <summary>The last day on which it may begin: a rule may end at a moment before that day's beginning.</summary>
    private static LocalDate LastDay(CalDateTime until, LocalTime from, string? zone)
    {
        var end = Local(until, zone);
        return until.HasTime && end.TimeOfDay < from ? end.Date.PlusDays(-1) : end.Date;
    }

    /// <summary>What the clock on the wall shows; floating times are meant by that clock already.</summary>
    private static LocalDateTime Local(CalDateTime time, string? zone)
    {
        var moment = zone is null || time.IsFloating || !time.HasTime || time.TzId == zone ? time : time.ToTimeZone(zone);
        return LocalDateTime.FromDateTime(moment.Value);
    }

    /// <summary>The event's own name where it is one here too, else the summary and number.</summary>
    private static string Name(CalendarEvent one, int number) =>
        Identifier.IsValid(one.Uid) ? one.Uid! : $"{Identifier.From(one.Summary ?? "")}-{number}".TrimStart('-');
}
