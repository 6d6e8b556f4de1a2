using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;
using NodaTime;
using Refettle.Timeline;

namespace Refettle.Sheets.Calendars;

/// <summary>Writes a timeline as an iCalendar file (RFC 5545): an event for each piece of work, none for waits.</summary>
public static class TimelineWriter
{
    /// <param name="now">The stamp that each event carries.</param>
    public static string Write(TimelineAnswer answer, string car, Instant now)
    {
        var file = new Ical.Net.Calendar { ProductId = "-//Refettle//Timeline//EN" };
        foreach (var (task, piece, i) in answer.Tasks.Where(task => !task.Task.IsWait)
            .SelectMany(task => task.Pieces.Select((piece, i) => (task, piece, i))).Where(one => one.piece.Start < one.piece.End))
        {
            file.Events.Add(new CalendarEvent
            {
                Uid = $"{car}.{task.Task.Id}.{i + 1}",
                DtStamp = new CalDateTime(now.ToDateTimeUtc(), "UTC"),
                Summary = task.Task.Says,
                Description = string.Join("\n", task.Task.Cautions),
                Start = At(piece.Start, answer.TimeZone),
                End = At(piece.End, answer.TimeZone),
            });
        }

        return new CalendarSerializer().SerializeToString(file) ?? "";
    }

    private static CalDateTime At(LocalDateTime time, string zone) =>
        new(time.Year, time.Month, time.Day, time.Hour, time.Minute, time.Second, zone);
}
