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

    /// <summary>Pairs that start together go in a circle of lags of 0, which has to be cut
    /// somewhere to place one after the other.</summary>
    [Theory]
    [MemberData(nameof(Seeds))]
    public void What_starts_together_is_placed_before_what_follows_it(int seed)
    {
        for (var variant = 0; variant < 20; variant++)
        {
            var random = new Random(100 * seed + variant);
            var activities = Enumerable.Range(0, 12).Select(i => new Activity($"a{i}", random.Next(1, 9), [random.Next(2)]));
            int[] order = [.. Enumerable.Range(0, 12)];
            random.Shuffle(order);
            var couples = Enumerable.Range(0, 6).Select(k => new Lag(order[2 * k], order[2 * k + 1], 0, 0, Anchor.Start));
            var follows = Enumerable.Range(1, 11)
                .Select(k => new Lag(order[random.Next(k)], order[k], random.Next(-3, 3), null, Anchor.Start));
            var project = new Project([.. activities], [new("hands", 6)], [.. couples, .. follows]);
            if (new FirstScheduler().Solve(new(project), Limits).Schedule is { } schedule)
                Assert.Empty(ScheduleCheck.Of(project, schedule));
        }
    }

    [Fact]
    public void The_same_seed_gives_the_same_schedule()
    {
        var project = ProjectGenerator.Restoration(120, 3);
        Assert.Equal(new FirstScheduler().Solve(new(project), Limits), new FirstScheduler().Solve(new(project), Limits));
    }
}
