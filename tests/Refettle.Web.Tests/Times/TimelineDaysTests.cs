using NodaTime;
using Refettle.Timeline;
using Refettle.Timeline.Network;
using Refettle.Timeline.Scheduling;
using Refettle.Web.Times;

namespace Refettle.Web.Tests.Times;

public sealed class TimelineDaysTests
{
    private static readonly LocalDate Tuesday = new(2027, 3, 2);

    private static readonly TimelineAnswer Answer = new()
    {
        Begin = Tuesday.AtMidnight(),
        TimeZone = "UTC",
        Status = ScheduleStatus.Feasible,
        Finish = At(4, 20, 0),
        Spells = [new(At(2, 18, 30), At(2, 21, 30)), new(At(4, 18, 30), At(4, 21, 30)), new(At(9, 18, 30), At(9, 21, 30))],
        Tasks =
        [
            Planned("strip", TaskKind.Strip, 200, new PlannedWindow(At(2, 18, 30), At(2, 21, 30)),
                new PlannedWindow(At(4, 18, 30), At(4, 18, 50))),
            Planned("way", TaskKind.Wait, 1500, new PlannedWindow(At(2, 19, 0), At(3, 20, 0))),
            Planned("nothing", TaskKind.Refit, 0),
            Planned("refit", TaskKind.Refit, 70, new PlannedWindow(At(4, 18, 50), At(4, 20, 0))) with
                { Task = Task("refit", TaskKind.Refit, 70) with { Uses = [Needed.Helper] } },
        ],
    };

    [Fact]
    public void Work_stands_on_its_days_and_goes_on_in_the_next_spell()
    {
        var days = TimelineDays.Of(Answer);
        Assert.Equal([Tuesday, Tuesday.PlusDays(2)], days.Days.Select(day => day.Day));
        Assert.Equal(["strip True"], days.Days[0].Lines.Select(line => $"{line.Task.Task.Id} {line.IsFirst}"));
        Assert.Equal(["strip False", "refit True"], days.Days[1].Lines.Select(line => $"{line.Task.Task.Id} {line.IsFirst}"));
        Assert.Equal("18:50–20:00", days.Days[1].Lines[1].Hours);
        Assert.True(days.Days[1].Lines[1].NeedsHelper);
    }

    [Fact]
    public void Waits_stand_on_every_day_on_which_they_run() =>
        Assert.Equal([1, 0], TimelineDays.Of(Answer).Days.Select(day => day.Waits.Count));

    /// <summary>Told of when it begins, and when it is over: between them it is only drawn.</summary>
    [Fact]
    public void A_wait_is_told_of_once_and_when_it_is_over()
    {
        var longer = Answer with
        { Tasks = [.. Answer.Tasks, Planned("cure", TaskKind.Wait, 3000, new PlannedWindow(At(1, 19, 0), At(4, 21, 0)))] };
        var days = TimelineDays.Of(longer).Days;
        Assert.Equal(["way cure", ""], days.Select(day => string.Join(' ', day.Begin.Select(wait => wait.Task.Id))));
        Assert.Equal(["", "way cure"], days.Select(day => string.Join(' ', day.Over.Select(wait => wait.Task.Id))));
    }

    [Fact]
    public void Bars_reach_from_the_first_hour_to_the_last()
    {
        var days = TimelineDays.Of(Answer);
        Assert.Equal((18, 22, 240), (days.FirstHour, days.LastHour, days.Width));
        Assert.Equal(30, days.Across(Tuesday, At(2, 18, 30)));
        Assert.Equal((0, 240), (days.Across(Tuesday, At(1, 20, 0)), days.Across(Tuesday, At(3, 20, 0))));
    }

    private static LocalDateTime At(int day, int hour, int minute) => new(2027, 3, day, hour, minute);

    private static PlannedTask Planned(string id, TaskKind kind, int minutes, params PlannedWindow[] pieces) =>
        new(Task(id, kind, minutes), pieces.Length == 0 ? At(4, 20, 0) : pieces[0].Start,
            pieces.Length == 0 ? At(4, 20, 0) : pieces[^1].End, false, pieces.ToValueList());

    private static WorkTask Task(string id, TaskKind kind, int minutes) => new() { Id = id, Kind = kind, Says = id, Takes = new(minutes) };
}
