using Google.OrTools.Sat;
using Refettle.Timeline.Scheduling;

namespace Refettle.Solvers.Scheduling;

/// <summary>One run of CP-SAT, which can be stopped, tells of every better solution and comes again where that is wanted.</summary>
internal sealed class ConstraintSearch(Effort effort)
{
    /// <summary>More than there are cores: each worker searches in a way of its own, and a good mixture of ways matters more.</summary>
    private const int LeastWorkers = 8;

    /// <summary>Looks for better solutions and proofs in many ways.</summary>
    /// <param name="better">Told of the starts of every better solution.</param>
    /// <returns>The solver's status and its proven bound on the objective.</returns>
    public (CpSolverStatus Status, double Bound, int[]? Starts) Run(
        ScheduleModel model, double until, double? work, Action<int[]>? better = null)
    {
        var workers = work is null ? Math.Max(LeastWorkers, effort.Limits.Workers) : LeastWorkers;
        var repeat = work is null ? "" : $"interleave_search:true max_deterministic_time:{work:0.###}";
        using var solver = new CpSolver { StringParameters = $"num_workers:{workers} {repeat} random_seed:{effort.Limits.Seed}" };
        using var listener = new Listener(solution => better?.Invoke(model.Timings.StartsIn(solution)));
        using var end = effort.Until(until);
        using var stop = end.Token.Register(solver.StopSearch);
        var status = solver.Solve(model.Model, listener);
        end.Cancel();
        var starts = status is CpSolverStatus.Optimal or CpSolverStatus.Feasible ? model.Timings.StartsIn(solver.Value) : null;
        return (status, status == CpSolverStatus.Infeasible ? double.PositiveInfinity : solver.BestObjectiveBound, starts);
    }

    private sealed class Listener(Action<Func<IntVar, long>> told) : CpSolverSolutionCallback
    {
        public override void OnSolutionCallback() => told(Value);
    }
}
