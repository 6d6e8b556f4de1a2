using Refettle.Peers.Projects;
using Refettle.Solvers.Scheduling;
using Refettle.Timeline;
using Refettle.Timeline.Scheduling;

namespace Refettle.Solvers.Tests.Scheduling;

/// <summary>How the finish follows when a project is changed in a known way.</summary>
public sealed class ChangedProjectTests
{
    private static readonly ScheduleLimits Limits = new(TimeSpan.FromMinutes(2));

    public static IEnumerable<object[]> Seeds => Enumerable.Range(1, 8).Select(seed => new object[] { 90_000 + seed });

    private static int? Finish(Project project) => new ConstraintScheduler().Solve(new(project), Limits).Schedule?.Makespan;

    [Theory]
    [MemberData(nameof(Seeds))]
    public void One_more_lag_never_shortens(int seed)
    {
        var project = ProjectGenerator.Small(6, seed);
        var more = project with { Lags = [.. project.Lags, new(1, 4, 2)] };
        Assert.True(Finish(more) is not { } after || after >= Finish(project));
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Every_time_three_times_as_long_finishes_three_times_as_late(int seed)
    {
        var project = ProjectGenerator.Small(5, seed);
        var scaled = new Project(
            project.Activities
                .Select(activity => activity with
                {
                    Duration = 3 * activity.Duration,
                    Earliest = 3 * activity.Earliest,
                    LatestFinish = 3 * activity.LatestFinish,
                    FixedStart = 3 * activity.FixedStart
                }).ToValueList(),
            project.Resources
                .Select(resource => resource with
                { Open = resource.Open?.Select(window => new Window(3 * window.Start, 3 * window.End)).ToValueList() }).ToValueList(),
            project.Lags.Select(lag => lag with { Least = 3 * lag.Least, Most = 3 * lag.Most }).ToValueList());
        Assert.Equal(3 * Finish(project), Finish(scaled));
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void The_order_in_which_activities_are_written_changes_nothing(int seed)
    {
        var project = ProjectGenerator.Small(6, seed);
        var last = project.Activities.Count - 1;
        var turned = project with
        {
            Activities = project.Activities.Reverse().ToValueList(),
            Lags = project.Lags.Reverse().Select(lag => lag with { Before = last - lag.Before, After = last - lag.After }).ToValueList(),
        };
        Assert.Equal(Finish(project), Finish(turned));
    }

    [Fact]
    public void The_same_seed_and_work_give_the_same_schedule()
    {
        var project = ProjectGenerator.Restoration(40, 3);
        var limits = new ScheduleLimits(TimeSpan.FromMinutes(5), Seed: 4, Work: 0.5);
        Assert.Equal(new ConstraintScheduler().Solve(new(project), limits), new ConstraintScheduler().Solve(new(project), limits));
    }
}
