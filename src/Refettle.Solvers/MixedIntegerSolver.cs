using Refettle.Access.Derivation;

namespace Refettle.Solvers;

/// <summary>Solves derivation problems with HiGHS, cutting circular support round by round.</summary>
/// <remarks>Short circles are cut before the first solve: adding only the circles found takes many times as many rounds.</remarks>
public sealed class MixedIntegerSolver : IDerivationSolver
{
    private const int LongestCircleCutBeforehand = 4;

    public DerivationAnswer Solve(DerivationProblem problem, CancellationToken cancel = default)
    {
        using var model = new DerivationModel(problem);
        foreach (var circle in ShortCircles.Of(problem, LongestCircleCutBeforehand))
            model.Cut(circle);
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

    private static DerivationAnswer Answer(DerivationProblem problem, int[] wayOf, long bound)
    {
        var cost = wayOf.Where(way => way >= 0).Sum(way => problem.Cost[way]);
        return new(wayOf, cost, Math.Min(bound, cost));
    }
}
