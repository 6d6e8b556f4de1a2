using Refettle.Access.Derivation;
using Refettle.Solvers;
using Refettle.Tests.Access.Derivation;

namespace Refettle.Solvers.Tests;

public sealed class MixedIntegerSolverTests
{
    [Fact]
    public void It_agrees_with_enumeration()
    {
        for (var seed = 0; seed < 300; seed++)
        {
            var problem = RandomProblems.Make(seed, facts: 3 + seed % 7);
            var least = RandomProblems.LeastByEnumeration(problem);
            var answer = new MixedIntegerSolver().Solve(problem);
            Assert.True(least == (answer.WayOf is null ? null : answer.Cost), $"seed {seed}: {least} against {answer.Cost}");
            Assert.True(answer.WayOf is null || answer.IsOptimal, $"seed {seed}: bound {answer.Bound}, cost {answer.Cost}");
        }
    }
}
