using Refettle.Access.Derivation;

namespace Refettle.Solvers;

/// <summary>Solves derivation problems, with limits or without, with HiGHS, cutting circular support round by round.</summary>
/// <remarks>Short circles are cut before the first solve: adding only the circles found takes many times as many rounds.</remarks>
public sealed class MixedIntegerSolver : IDerivationSolver, ILimitedSolver
{
    private const int LongestCircleCutBeforehand = 4;

    public DerivationAnswer Solve(DerivationProblem problem, CancellationToken cancel = default) =>
        Solve(new LimitedProblem(problem, []), cancel);

    public DerivationAnswer Solve(LimitedProblem limited, CancellationToken cancel = default)
    {
        var problem = limited.Problem;
        using var model = new DerivationModel(problem, limited.Limits);
        foreach (var circle in ShortCircles.Of(problem, LongestCircleCutBeforehand))
            model.Cut(circle);
        if (limited.Limits.Count > 0)
            model.LeaveOutHeuristics();
        if (limited.Start is { } start)
            model.Start(start);
        var bound = 0L;
        while (true)
        {
            var outcome = model.Solve(cancel);
            if (double.IsPositiveInfinity(outcome.Bound))
                return DerivationAnswer.Impossible;

            // A bound within rounding of a whole number is that number; the least cost is a whole number, so a bound rounds up.
            bound = Math.Max(bound, (long)Math.Ceiling(outcome.Bound - 1e-3));
            if (outcome.Values is null)
                return new(null, long.MaxValue, bound);
            var wayOf = model.WayOf(outcome.Values);
            var circles = UnfoundedSets.Of(problem, wayOf);
            if (circles.Count == 0)
                return Answer(problem, wayOf, outcome.IsFinished ? long.MaxValue : bound);
            if (cancel.IsCancellationRequested)
                return new(null, long.MaxValue, bound);
            foreach (var circle in circles)
                model.Cut(circle);
        }
    }

    public double[]? Prices(LimitedProblem limited)
    {
        using var model = new DerivationModel(limited.Problem, limited.Limits);
        return model.Prices();
    }

    private static DerivationAnswer Answer(DerivationProblem problem, int[] wayOf, long bound)
    {
        var cost = wayOf.Where(way => way >= 0).Sum(way => problem.Cost[way]);
        return new(wayOf, cost, Math.Min(bound, cost));
    }
}
