using CsCheck;
using Refettle.Access.Derivation;
using Refettle.Peers.Solvers;
using static Refettle.Solvers.Tests.Properties.Problems;

namespace Refettle.Solvers.Tests.Properties;

/// <summary>What must hold of any exact solver, whatever the problem.</summary>
public sealed class SolverProperties
{
    private const int Runs = 300;
    private static readonly IDerivationSolver Solver = UnderTest.Make();

    [Fact]
    public void An_answer_replays_and_is_proven() => Any.Sample(
        random =>
        {
            var problem = Make(random.Facts, random.Ways, random.Goals);
            var answer = Solver.Solve(problem);
            if (answer.WayOf is null)
                return;
            Assert.Empty(Foundation.Faults(problem, answer));
            Assert.True(answer.IsOptimal);
        },
        iter: Runs);

    [Fact]
    public void Another_way_never_raises_the_cost() => Any.Sample(
        random =>
        {
            var fewer = Solver.Solve(Make(random.Facts, random.Ways[..^1], random.Goals));
            var more = Solver.Solve(Make(random.Facts, random.Ways, random.Goals));
            Assert.True(more.Cost <= fewer.Cost, $"{fewer.Cost} became {more.Cost}");
        },
        iter: Runs);

    [Fact]
    public void A_need_less_never_raises_the_cost() => Any.Sample(
        random =>
        {
            var way = random.Ways[random.Seed % random.Ways.Length];
            var easier = random.Ways.Select(other => other == way ? other with { Needs = [.. other.Needs.Skip(1)] } : other).ToList();
            Assert.True(Solver.Solve(Make(random.Facts, easier, random.Goals)).Cost <= Solver.Solve(
                Make(random.Facts, random.Ways, random.Goals)).Cost);
        },
        iter: Runs);

    [Fact]
    public void Numbering_changes_nothing() => Any.Sample(
        random =>
        {
            var chance = new Random(random.Seed);
            var place = Enumerable.Range(0, random.Facts).ToArray();
            chance.Shuffle(place);
            var ways = random.Ways.Select(way => new RandomWay(place[way.Fact], [.. way.Needs.Select(need => place[need])], way.Cost))
                .ToArray();
            chance.Shuffle(ways);
            var renumbered = Solver.Solve(Make(random.Facts, ways, [.. random.Goals.Select(goal => place[goal])]));
            Assert.Equal(Solver.Solve(Make(random.Facts, random.Ways, random.Goals)).Cost, renumbered.Cost);
        },
        iter: Runs);

    [Fact]
    public void Goals_together_cost_no_less_than_each_and_no_more_than_all_apart() => Any.Sample(
        random =>
        {
            var together = Solver.Solve(Make(random.Facts, random.Ways, random.Goals)).Cost;
            var apart = random.Goals.Distinct().Select(goal => Solver.Solve(Make(random.Facts, random.Ways, [goal])).Cost).ToList();
            Assert.True(together >= apart.Max());
            Assert.True(apart.Contains(long.MaxValue) || together <= apart.Sum());
        },
        iter: Runs);

    [Fact]
    public void Cut_short_it_still_gives_a_plan_and_a_bound_that_hold() => Any.Sample(
        random =>
        {
            var problem = Make(random.Facts, random.Ways, random.Goals);
            var least = Solver.Solve(problem).Cost;
            using var cancelled = new CancellationTokenSource();
            cancelled.Cancel();
            var answer = Solver.Solve(problem, cancelled.Token);
            Assert.True(answer.Bound <= least, $"bound {answer.Bound} is above {least}");
            if (answer.WayOf is not null)
                Assert.Empty(Foundation.Faults(problem, answer));
            Assert.True(answer.WayOf is not null || least == long.MaxValue);
        },
        iter: Runs);
}
