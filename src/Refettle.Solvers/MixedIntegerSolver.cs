using Google.OrTools.ModelBuilder;
using Refettle.Access.Derivation;

namespace Refettle.Solvers;

/// <summary>Solves derivation problems with HiGHS, cutting circular support round by round.</summary>
/// <remarks>Short circles are cut before the first solve: adding only the circles found takes many times as many rounds.</remarks>
public sealed class MixedIntegerSolver : IDerivationSolver
{
    private const int LongestCircleCutBeforehand = 4;

    // The solver stops at a relative gap of 0.01 % unless told otherwise; costs are whole numbers, so less than 1 apart is equal.
    private const string Exact = "mip_rel_gap=0\nmip_abs_gap=0.5\noutput_flag=false";

    public DerivationAnswer Solve(DerivationProblem problem, CancellationToken cancel = default)
    {
        using var model = new DerivationModel(problem);
        foreach (var circle in ShortCircles.Of(problem, LongestCircleCutBeforehand))
            model.Cut(circle);
        var bound = 0L;
        while (true)
        {
            using var solver = new ModelSolverHelper("highs");
            solver.SetSolverSpecificParameters(Exact);
            using var stop = cancel.Register(() => solver.InterruptSolve());
            solver.Solve(model.Model);
            if (solver.Status() == SolveStatus.INFEASIBLE)
                return DerivationAnswer.Impossible;
            if (!solver.HasSolution())
                return new(null, long.MaxValue, bound);
            bound = Math.Max(bound, (long)Math.Ceiling(solver.BestObjectiveBound() - 0.5));
            var wayOf = model.WayOf(solver);
            var circles = UnfoundedSets.Of(problem, wayOf);
            if (circles.Count == 0)
                return Answer(problem, wayOf, bound);
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
