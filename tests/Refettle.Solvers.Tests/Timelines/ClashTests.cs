using NodaTime;
using Refettle.Solvers.Scheduling;
using Refettle.Timeline;
using Refettle.Timeline.Network;
using Refettle.Timeline.Scheduling;

namespace Refettle.Solvers.Tests.Timelines;

public sealed class ClashTests
{
    private static readonly CarCalendar Evenings = new()
    {
        TimeZone = "Europe/Berlin",
        Spells = [new()
            { Id = "evenings", First = new(2027, 3, 2), From = new(18, 0), Until = new(21, 0), Repeats = new(Rhythm.Daily, 1, []) }],
    };

    [Fact]
    public void Settled_starts_that_clash_are_told_in_words_and_no_others()
    {
        var answer = Answer(Evenings,
            [Task("Bleed", 60, new(2027, 3, 3, 18, 0)), Task("Align", 60, new(2027, 3, 3, 18, 30)),
                Task("Polish", 30, new(2027, 3, 5, 18, 0))], []);
        Assert.Equal(ScheduleStatus.Impossible, answer.Status);
        Assert.Equal(["\"Align\" is to start Wed 2027-03-03 18:30", "\"Bleed\" is to start Wed 2027-03-03 18:00"], answer.Clashes.Order());
    }

    [Fact]
    public void A_start_before_its_coat_has_dried_clashes_alone()
    {
        var answer = Answer(Evenings, [Task("Coat", 60), Task("Fit", 30, new(2027, 3, 3, 18, 0))], [new("coat", "fit", 48 * 60, 72 * 60)]);
        Assert.Equal(["\"Fit\" is to start Wed 2027-03-03 18:00"], answer.Clashes);
    }

    [Fact]
    public void A_date_that_cannot_be_met_is_told_with_the_earliest_finish()
    {
        var answer = Answer(Evenings with { Handover = new(new(2027, 3, 3, 12, 0), "meeting") }, [Task("Strip", 300)], []);
        Assert.Equal(new LocalDateTime(2027, 3, 3, 20, 0), answer.Finish);
        Assert.False(answer.IsInTime);
        Assert.Equal(["\"Strip\" is to be done by Wed 2027-03-03 12:00, the date to meet"], answer.Clashes);
        Assert.Equal(answer.Finish, answer.Bound);
    }

    /// <summary>By hand: the primer from 18 to 19 o'clock on the first evening, wax after it, the top
    /// coat 24 h later from 19 to 20.</summary>
    [Fact]
    public void The_finish_is_proven_against_one_worked_out_by_hand()
    {
        var answer = Answer(Evenings, [Task("Primer", 60), Task("Top", 60), Task("Wax", 90)], [new("primer", "top", 24 * 60, 7 * 24 * 60)]);
        Assert.Equal(new LocalDateTime(2027, 3, 3, 20, 0), answer.Finish);
        Assert.Equal(answer.Finish, answer.Bound);
    }

    private static TimelineAnswer Answer(CarCalendar calendar, ValueList<WorkTask> tasks, ValueList<TaskLink> links) =>
        new TimelinePlanner(new ConstraintScheduler()).Of(
        new()
        {
            Car = new() { Id = "car", Name = "Car", Calendar = calendar },
            Network = new(tasks, links, []),
            Plan = new() { Question = new() { Goals = [] }, Status = Refettle.Access.PlanStatus.Optimal },
            Now = Instant.FromUtc(2027, 3, 1, 12, 0),
        },
        new(TimeSpan.FromSeconds(60))).Value;

    private static WorkTask Task(string says, int minutes, LocalDateTime? start = null) =>
        new() { Id = says.ToLowerInvariant(), Kind = TaskKind.Own, Says = says, Takes = new(minutes), FixedStart = start };
}
