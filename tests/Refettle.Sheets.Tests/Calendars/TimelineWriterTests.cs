using NodaTime;
using Refettle.Sheets.Calendars;
using Refettle.Timeline;
using Refettle.Timeline.Network;
using Refettle.Timeline.Scheduling;

namespace Refettle.Sheets.Tests.Calendars;

public sealed class TimelineWriterTests
{
    /// <summary>Read back by Ical.Net: 9 o'clock in Berlin is 8 UTC the day before the clock changes (27 March
    /// 2027) and 7 UTC the day after.</summary>
    [Fact]
    public void Each_piece_of_work_is_an_event_at_its_moment_and_waits_are_none()
    {
        var file = Ical.Net.Calendar.Load(TimelineWriter.Write(Answer, "heron", Instant.FromUtc(2027, 3, 1, 0, 0)))!;
        Assert.Equal(["Take off: Tank", "Take off: Tank"], file.Events.Select(one => one.Summary));
        Assert.Equal([new DateTime(2027, 3, 27, 8, 0, 0), new DateTime(2027, 3, 29, 7, 0, 0)], file.Events.Select(one => one.Start!.AsUtc));
        Assert.Equal(2, file.Events.Select(one => one.Uid).Distinct().Count());
        Assert.Equal("No flame", file.Events[0]!.Description);
    }

    private static TimelineAnswer Answer { get; } = new()
    {
        Begin = new(2027, 3, 1, 0, 0),
        TimeZone = "Europe/Berlin",
        Status = ScheduleStatus.Feasible,
        Tasks =
        [
            Planned(new() { Id = "strip.tank", Kind = TaskKind.Strip, Says = "Take off: Tank", Takes = new(120), Cautions = ["No flame"] },
                [new(new(2027, 3, 27, 9, 0), new(2027, 3, 27, 10, 0)), new(new(2027, 3, 29, 9, 0), new(2027, 3, 29, 10, 0))]),
            Planned(new() { Id = "wait", Kind = TaskKind.Wait, Says = "dries", Takes = new(600), Pace = Pace.WallClock },
                [new(new(2027, 3, 29, 10, 0), new(2027, 3, 29, 20, 0))]),
        ],
    };

    private static PlannedTask Planned(WorkTask task, ValueList<PlannedWindow> pieces) =>
        new(task, pieces[0].Start, pieces[pieces.Count - 1].End, false, pieces);
}
