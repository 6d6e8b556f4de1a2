using Refettle.Peers.Projects;
using Refettle.Solvers.Scheduling;
using Refettle.Timeline;
using Refettle.Timeline.Scheduling;

namespace Refettle.Solvers.Tests.Scheduling;

/// <summary>Small projects with everything a project can have, against trying all schedules.</summary>
public sealed class SmallProjectTests
{
    private const int Horizon = 90;
    private static readonly ScheduleLimits Limits = new(TimeSpan.FromMinutes(2));

    public static IEnumerable<object[]> Seeds => Enumerable.Range(1, 12).Select(seed => new object[] { seed });

    [Theory]
    [MemberData(nameof(Seeds))]
    public void The_finish_is_the_earliest_there_is(int seed)
    {
        for (var variant = 0; variant < 5; variant++)
        {
            var project = ProjectGenerator.Small(4, 100 * seed + variant);
            var answer = new ConstraintScheduler().Solve(new(project), Limits);
            var expected = new Exhaustive(project, Horizon).Finish;
            Assert.Equal(expected, answer.Schedule?.Makespan);
            Assert.Equal(expected is null ? ScheduleStatus.Impossible : ScheduleStatus.Optimal, answer.Status);
            if (answer.Schedule is { } schedule)
                Assert.Empty(ScheduleCheck.Of(project, schedule));
        }
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Each_aim_is_the_least_there_is_with_that_finish(int seed)
    {
        var project = ProjectGenerator.Small(4, 500 + seed);
        var random = new Random(seed);
        Aim[] aims =
        [
            new Aim.LateStarts([0, 2, 1, 3]),
            new Aim.FewChanges([.. Enumerable.Range(0, 4).Select(_ => random.Next(-1, 2))]),
            new Aim.SameDays([.. Enumerable.Range(0, 4).Select(_ => random.Next(30))], [1, 1, 2, 1], 5),
        ];
        foreach (var aim in aims)
        {
            var answer = new ConstraintScheduler().Solve(new(project, [aim]), Limits);
            if (answer.Schedule is not { } schedule)
                continue;
            Assert.Empty(ScheduleCheck.Of(project, schedule));
            Assert.Equal(ScheduleStatus.Optimal, answer.Status);
            Assert.Equal(new Exhaustive(project, Horizon).Least(schedule.Makespan, aim.Cost), answer.Costs[0]);
        }
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void A_clash_is_impossible_and_none_of_it_can_be_left_out(int seed)
    {
        for (var variant = 0; variant < 6; variant++)
        {
            var project = ProjectGenerator.Small(4, 7000 + 100 * seed + variant);
            var answer = new ConstraintScheduler().Solve(new(project), Limits);
            if (answer.Clash.Count == 0)
            {
                // Possible, or impossible whatever is given up.
                Assert.Equal(answer.Schedule is null, new Exhaustive(Conditions.Keep(project, []), Horizon).Finish is null);
                continue;
            }

            Assert.Null(new Exhaustive(Conditions.Keep(project, answer.Clash), Horizon).Finish);
            foreach (var one in answer.Clash)
                Assert.NotNull(new Exhaustive(Conditions.Keep(project, [.. answer.Clash.Where(other => other != one)]), Horizon).Finish);
        }
    }
}
