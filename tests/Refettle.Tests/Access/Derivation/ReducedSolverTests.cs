using Refettle.Access.Derivation;

namespace Refettle.Tests.Access.Derivation;

public sealed class ReducedSolverTests
{
    [Fact]
    public void Reduction_keeps_the_least_cost_of_small_graphs()
    {
        for (var seed = 0; seed < 3_000; seed++)
        {
            var problem = RandomProblems.Make(seed, facts: 3 + seed % 7);
            var least = RandomProblems.LeastByEnumeration(problem);
            var answer = new ReducedSolver(mostNodes: long.MaxValue).Solve(problem);
            Assert.True(least == (answer.WayOf is null ? null : answer.Cost), $"seed {seed}: {least} against {answer.Cost}");
            if (answer.WayOf is null)
                continue;
            Assert.True(answer.IsOptimal);
            Assert.NotNull(Closure.Supported(problem, answer.WayOf));
        }
    }

    [Fact]
    public void Reduction_and_plain_search_agree_on_larger_graphs()
    {
        for (var seed = 0; seed < 400; seed++)
        {
            var problem = RandomProblems.Make(seed, facts: 12 + seed % 14, mostWays: 2, goals: 3);
            var reduced = new ReducedSolver(mostNodes: long.MaxValue).Solve(problem);
            var plain = new TreeSearch().Solve(problem);
            Assert.True(plain.Cost == reduced.Cost, $"seed {seed}: {plain.Cost} against {reduced.Cost}");
        }
    }
}
