using Refettle.Access.Derivation;
using Refettle.Scope;

namespace Refettle.Tests.Scope;

/// <summary>What is said when no choice is found: only what is proven. A must of ten hours where
/// there is one, worked out by hand.</summary>
public sealed class ScopeObstacleTests
{
    private static readonly Car _car = new()
    { Id = "car", Name = "Car", Jobs = [new() { Id = "rebuild", Name = "Rebuild", Work = new(600) }] };

    private static readonly ScopeQuestion _tooLittle = new() { PerHour = new(60), Hours = new(60), Also = ["rebuild"] };

    [Fact]
    public void What_the_musts_take_is_said_where_that_is_the_least() =>
        Assert.Equal("the musts take 10.0 h at the least cost, and there are 60 min",
            Said(new ReducedSolver(), DerivationAnswer.Impossible));

    [Fact]
    public void A_choice_that_was_not_found_in_time_is_not_called_impossible() =>
        Assert.Contains("whether there is one is not known", Said(new ReducedSolver(), new(null, long.MaxValue, 0)),
            StringComparison.Ordinal);

    /// <summary>What was found in the time may be far from the least.</summary>
    [Fact]
    public void What_the_musts_take_is_not_said_where_the_least_is_not_known() =>
        Assert.Contains("not worked out in time", Said(new Ended(isFound: true), DerivationAnswer.Impossible), StringComparison.Ordinal);

    [Fact]
    public void Musts_that_nothing_was_found_for_in_time_are_not_called_impossible() =>
        Assert.Contains("whether there is one is not known", Said(new Ended(isFound: false), DerivationAnswer.Impossible),
            StringComparison.Ordinal);

    private static string Said(IDerivationSolver free, DerivationAnswer limited) =>
        Assert.Single(new ScopePlanner(free, new Limited(limited)).Choose(_car, _tooLittle).Obstacles);

    /// <summary>Ends before it has proven anything.</summary>
    private sealed class Ended(bool isFound) : IDerivationSolver
    {
        public DerivationAnswer Solve(DerivationProblem problem, CancellationToken cancel = default) =>
            isFound ? Beside(new ReducedSolver().Solve(problem, cancel)) : new(null, long.MaxValue, 0);

        private static DerivationAnswer Beside(DerivationAnswer answer) => answer with { Bound = answer.Cost - 1 };
    }

    private sealed class Limited(DerivationAnswer answer) : ILimitedSolver
    {
        public DerivationAnswer Solve(LimitedProblem limited, CancellationToken cancel = default) => answer;

        public double[]? Prices(LimitedProblem limited) => null;
    }
}
