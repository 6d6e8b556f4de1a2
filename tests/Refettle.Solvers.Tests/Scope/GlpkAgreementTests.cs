using Refettle.Access;
using Refettle.Scope;

namespace Refettle.Solvers.Tests.Scope;

/// <summary>Choices within limits against GLPK (glpsol), which is given car and jobs in a formulation of its own.</summary>
public sealed class GlpkAgreementTests
{
    private const int Cases = 220;

    [GlpkFact]
    public void Random_choices_within_limits_gain_the_same()
    {
        var (impossible, bitten) = (0, 0);
        for (var seed = 0; seed < Cases; seed++)
        {
            var car = RandomScope.Make(seed, parts: 20, jobs: 3 + seed % 5);
            var question = RandomScope.Limited(car, seed);
            var scope = RandomScope.Planner.Choose(car, question);
            var optimum = Glpk.Optimum(GlpkModel.Of(car, question));
            Assert.NotEqual(PlanStatus.Feasible, scope.Status);
            Assert.Equal(optimum is null, scope.Status == PlanStatus.Impossible);
            Assert.True(optimum is null || Math.Abs(optimum.Value - (double)scope.Gain) < 1e-6,
                $"seed {seed}: glpsol {optimum}, planner {scope.Gain}");
            impossible += optimum is null ? 1 : 0;
            bitten += scope.Left.Any(left => left.Why == WhyLeft.NoRoom) ? 1 : 0;
        }

        Assert.InRange(impossible, 1, Cases / 2);
        Assert.InRange(bitten, Cases / 5, Cases);
    }
}
