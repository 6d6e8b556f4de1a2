using Refettle.Peers.Projects;
using Refettle.Timeline;
using Refettle.Timeline.Scheduling;

namespace Refettle.Tests.Timeline;

public sealed class ReplannerTests
{
    private static readonly ScheduleLimits Limits = new(TimeSpan.FromMinutes(1));

    public static IEnumerable<object[]> Seeds => Enumerable.Range(1, 6).Select(seed => new object[] { seed });

    /// <summary>A quarter of the way in, with what has begun by then done as planned.</summary>
    private static (Project Project, Schedule Known, int Now) Begun(int seed)
    {
        var project = ProjectGenerator.Restoration(120, seed);
        var known = new FirstScheduler().Solve(new(project), Limits).Schedule!;
        var now = known.Makespan / 4;
        var activities = project.Activities
            .Select((activity, i) => known.Starts[i] < now ? activity with { Done = new(known.Starts[i], known.Finishes[i]) } : activity);
        return (project with { Activities = activities.ToValueList() }, known, now);
    }

    private static ValueList<int?> Starts(Schedule schedule) => schedule.Starts.Select(start => (int?)start).ToValueList();

    [Theory]
    [MemberData(nameof(Seeds))]
    public void A_longer_task_leaves_what_has_begun_and_keeps_all_rules(int seed)
    {
        var (project, known, now) = Begun(seed);
        var longer = Enumerable.Range(0, 120).First(i => project.Activities[i].Done is null && project.Activities[i].Pace == Pace.Pausing);
        project = project with
        {
            Activities = project.Activities
                .Select((activity, i) => i == longer ? activity with { Duration = activity.Duration + 240 } : activity).ToValueList()
        };
        var answer = new Replanner().Replan(new(project, Starts(known), now));
        Assert.NotNull(answer.Schedule);
        Assert.Empty(ScheduleCheck.Of(project, answer.Schedule));
        Assert.DoesNotContain(answer.Moved, i => project.Activities[i].Done is not null);
        Assert.All(Enumerable.Range(0, 120).Where(i => project.Activities[i].Done is null),
            i => Assert.True(answer.Schedule.Starts[i] >= now));
        Assert.True(answer.Schedule.Makespan >= answer.Bound);
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Where_nothing_has_changed_and_nothing_better_is_known_nothing_moves(int seed)
    {
        var (project, known, now) = Begun(seed);
        var answer = new Replanner().Replan(new(project, Starts(known), now) { Patience = 10 });
        Assert.Empty(answer.Moved);
        Assert.Equal(known.Starts, answer.Schedule!.Starts);
    }

    [Fact]
    public void The_same_question_gives_the_same_answer()
    {
        var (project, known, now) = Begun(2);
        var question = new ReplanQuestion(project, Starts(known), now + 2000);
        Assert.Equal(new Replanner().Replan(question, 5), new Replanner().Replan(question, 5));
    }
}
