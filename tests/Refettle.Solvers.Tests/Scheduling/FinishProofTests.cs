using Refettle.Peers.Projects;
using Refettle.Solvers.Scheduling;
using Refettle.Solvers.Tests.Published;
using Refettle.Timeline;
using Refettle.Timeline.Scheduling;

namespace Refettle.Solvers.Tests.Scheduling;

/// <summary>Several workers that want different finishes (PSPLIB: Kolisch and Sprecher 1996, with published optima).</summary>
public sealed class FinishProofTests
{
    [SharedDataTheory]
    [InlineData(1, false)]
    [InlineData(2, false)]
    [InlineData(3, false)]
    [InlineData(1, true)]
    [InlineData(2, true)]
    [InlineData(3, true)]
    public void From_the_first_schedule_it_comes_to_the_published_optimum_and_proves_it(int workers, bool isEarly)
    {
        var turns = isEarly ? ProofTurns.Searching : ProofTurns.Lasting;
        foreach (var (name, optimum) in ((string, int)[])[("j301_1.sm", 43), ("j3013_1.sm", 58), ("j3029_1.sm", 85), ("j3045_1.sm", 82)])
        {
            var project = PublishedProject.Parse(SharedData.Read("rcpsp_sm", "j30", name), ".sm");
            var builder = new Builder(Network.Of(project));
            var best = new BestFinish(builder, 0, () => { });
            var first = new FirstSchedule(builder, new Random(1));
            first.Run(1, 0);
            best.Keep(first.Best!);
            var effort = new Effort(new(TimeSpan.FromMinutes(10), 1, null, workers), TimeProvider.System, CancellationToken.None);
            new FinishProof(builder, best, effort, (_, _) => { }).Run(turns, CancellationToken.None);
            Assert.Equal((name, optimum, true), (name, best.Makespan, best.IsProven));
            Assert.Empty(ScheduleCheck.Of(project, builder.ToSchedule(best.Starts!)));
        }
    }

    /// <summary>Of a clause, two statements that follow from each other were both left out: now and then an answer said that 81 is the
    /// earliest finish of the first.</summary>
    [SharedDataTheory]
    [InlineData("j605_3.sm", 80, 20)]
    [InlineData("j6014_10.sm", 72, 3)]
    [InlineData("j609_2.sm", 82, 2)]
    public void What_is_called_the_earliest_finish_is_the_published_one(string name, int optimum, int seeds)
    {
        var project = PublishedProject.Parse(SharedData.Read("rcpsp_sm", "j60", name), ".sm");
        foreach (var seed in Enumerable.Range(1, seeds))
        {
            var answer = new ConstraintScheduler().Solve(new(project), new(TimeSpan.FromSeconds(4), seed, null, 2));
            Assert.True(answer.Bound <= optimum, $"seed {seed}: {answer.Bound}");
            if (answer.Status == ScheduleStatus.Optimal)
                Assert.Equal(optimum, answer.Schedule!.Makespan);
        }
    }

    [Fact]
    public void Of_equals_each_has_its_turn_until_there_is_a_better_one()
    {
        var best = new BestFinish(new(Network.Of(new([new("a", 2, []), new("b", 3, [])], [], []))), 0, () => { });
        Assert.Null(best.OneOfEquals());
        best.Keep([0, 1]);
        best.Keep([1, 1]);
        best.Keep([5, 5]);
        Assert.Equal<int[]?>([[0, 1], [1, 1], [0, 1]], [best.OneOfEquals(), best.OneOfEquals(), best.OneOfEquals()]);
        best.Keep([0, 0]);
        Assert.Equal<int[]?>([[0, 0], [0, 0]], [best.OneOfEquals(), best.OneOfEquals()]);
    }
}
