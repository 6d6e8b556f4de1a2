using Bunit;
using Microsoft.AspNetCore.Components;
using NodaTime;
using Refettle.Timeline;
using Refettle.Timeline.Network;
using Refettle.Web.Times;

namespace Refettle.Web.Tests.Times;

/// <summary>A task goes to any spell of a day, by drag and by keyboard.</summary>
public sealed class MoveTests : BunitContext
{
    private static readonly PlannedWindow Morning = new(new(2027, 3, 6, 9, 0), new(2027, 3, 6, 12, 0));

    private static readonly PlannedWindow Afternoon = new(new(2027, 3, 6, 14, 0), new(2027, 3, 6, 17, 0));

    private static readonly PlannedTask Task = new(new()
    { Id = "strip.tank", Kind = TaskKind.Strip, Says = "Take off the tank", Takes = new(30) }, Morning.Start,
        Morning.Start.PlusMinutes(30), false, [new(Morning.Start, Morning.Start.PlusMinutes(30))]);

    private static readonly TimelineAnswer Answer = new()
    {
        Begin = new(2027, 3, 1, 8, 0),
        TimeZone = "UTC",
        Status = Refettle.Timeline.Scheduling.ScheduleStatus.Optimal,
        Tasks = [Task],
        Spells = [Morning, Afternoon],
        Finish = new(2027, 3, 6, 9, 30)
    };

    [Fact]
    public void It_is_dropped_on_the_second_spell_of_a_day()
    {
        var days = TimelineDays.Of(Answer);
        PlannedWindow? dropped = null;
        var section = Render<DaySection>(made => made.Add(one => one.Days, days).Add(one => one.Day, days.Days[0])
            .Add(one => one.Details, (PlannedTask _) => "").Add(one => one.Dropped, window => dropped = window));
        Assert.Equal(["09:00–12:00", "14:00–17:00"], section.FindAll(".spell-drop").Select(drop => drop.TextContent));
        section.FindAll(".spell-drop")[1].Drop();
        Assert.Equal(Afternoon, dropped);
        section.Find("section").Drop();
        Assert.Equal(Morning, dropped);
    }

    [Fact]
    public void It_is_moved_by_choosing_a_spell()
    {
        LocalDateTime? start = null;
        var card = Render<TaskCard>(made => made.Add(one => one.Planned, Task).Add(one => one.Car, new(new() { Id = "car", Name = "Car" }))
            .Add(one => one.Spells, Answer.Spells).Add(one => one.Settle, time => start = time));
        card.Find("select").Change("1");
        card.FindAll("form")[1].Submit();
        Assert.Equal(Afternoon.Start, start);
    }
}
