using Refettle.Peers.Projects;
using Refettle.Timeline;
using Refettle.Timeline.Scheduling;

namespace Refettle.Tests.Timeline;

public sealed class FirstSchedulerTests
{
    private static readonly ScheduleLimits Limits = new(TimeSpan.FromMinutes(1));

    public static IEnumerable<object[]> Seeds => Enumerable.Range(1, 40).Select(seed => new object[] { seed });

    [Theory]
    [MemberData(nameof(Seeds))]
    public void A_restoration_gets_a_valid_schedule(int seed)
    {
        var project = ProjectGenerator.Restoration(20 + 8 * seed, seed);
        var answer = new FirstScheduler().Solve(new(project), Limits);
        Assert.NotNull(answer.Schedule);
        Assert.Empty(ScheduleCheck.Of(project, answer.Schedule));
        Assert.InRange(answer.Bound, 1, answer.Schedule.Makespan);
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Small_projects_are_never_scheduled_wrongly(int seed)
    {
        var found = 0;
        for (var variant = 0; variant < 50; variant++)
        {
            var project = ProjectGenerator.Small(6, 1000 * seed + variant);
            var answer = new FirstScheduler().Solve(new(project), Limits);
            if (answer.Schedule is null)
                continue;
            found++;
            Assert.Empty(ScheduleCheck.Of(project, answer.Schedule));
            Assert.InRange(answer.Bound, 0, answer.Schedule.Makespan);
        }

        Assert.InRange(found, 10, 50);
    }

    [Fact]
    public void The_same_seed_gives_the_same_schedule()
    {
        var project = ProjectGenerator.Restoration(120, 3);
        Assert.Equal(new FirstScheduler().Solve(new(project), Limits), new FirstScheduler().Solve(new(project), Limits));
    }
}
