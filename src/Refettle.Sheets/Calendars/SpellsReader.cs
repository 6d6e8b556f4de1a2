using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using NodaTime;

namespace Refettle.Sheets.Calendars;

/// <summary>What an iCalendar file holds.</summary>
/// <param name="Zone">The time zone of its events; null when they are in UTC or float.</param>
public sealed record SpellsFile(string? Zone, ValueList<Spell> Spells);

/// <summary>Reads spells from an iCalendar file (RFC 5545): events, once, daily or weekly. Whole days and what else a calendar can hold are
/// faults, never guessed at.</summary>
public static class SpellsReader
{
    /// <param name="zone">The time zone of the car; null when none is chosen.</param>
    /// <returns>All faults, each with its event.</returns>
    public static Result<SpellsFile> Read(string text, string? zone)
    {
        Ical.Net.Calendar? file;
        try
        {
            file = Ical.Net.Calendar.Load(text);
        }
        catch (Exception trouble) when (trouble is not OutOfMemoryException)
        {
            return Bad("calendar", $"it cannot be read ({trouble.Message.ReplaceLineEndings(" ").TrimEnd('.')})",
                "Give an iCalendar file, as calendars export it (.ics).");
        }

        if (file is null || file.Events.Count == 0)
            return Bad("calendar", "there is no event in it", "Give an iCalendar file with events.");
        var named = file.Events.Select(one => one.Start?.TzId).Where(id => id is not null and not "UTC").Distinct().ToList();
        if (named.Count > 1)
            return Bad("calendar", $"its events are in several time zones ({string.Join(", ", named)})", "Export it in one.");
        var home = zone ?? named.FirstOrDefault();
        if (home is not null && DateTimeZoneProviders.Tzdb.GetZoneOrNull(home) is null)
            return Bad("calendar", $"its time zone \"{home}\" is not in the time-zone database",
                "Export it with a name such as Europe/Berlin.");
        var events = file.Events.Select((one, index) => EventReader.Read(one, index + 1, home)).ToList();
        var faults = events.SelectMany(one => one.Faults).ToList();
        if (faults.Count > 0)
            return Result<SpellsFile>.Bad(faults);
        var spells = events.Select(one => one.Value).ToList();
        var twice = spells.GroupBy(spell => spell.Id).Where(group => group.Count() > 1).Select(group => group.Key).ToList();
        return twice.Count > 0
            ? Bad("calendar", $"several events are called {string.Join(", ", twice)}",
                "An event that was moved on one day cannot be read yet: take it out and enter it by hand.")
            : Result<SpellsFile>.Good(new(home, spells.ToValueList()));
    }

    private static Result<SpellsFile> Bad(string place, string found, string mend) => Result<SpellsFile>.Bad(new Fault(place, found, mend));
}
