using Google.OrTools.Sat;
using Refettle.Timeline.Scheduling;

namespace Refettle.Solvers.Scheduling;

/// <summary>One run of CP-SAT, which can be stopped, tells of every better solution and comes again where that is wanted.</summary>
internal sealed class ConstraintSearch(Effort effort)
{
    /// <summary>More than there are cores: each worker searches in a way of its own, and a good mixture of ways matters more.</summary>
    private const int LeastWorkers = 8;

    /// <summary>One worker that learns clauses without linear relaxation. Explaining conflicts by integer bounds, and no Boolean for each pair that
    /// cannot overlap in a cumulative, together prove a known good finish four times as fast as a pair of workers without (published instances of 60 activities).</summary>
    private const string Proof = "num_workers:1 subsolvers:\"no_lp\" use_new_integer_conflict_resolution:true use_disjunctive_constraint_in_cumulative:false";

    /// <summary>Searches that prove side by side must differ; this is in the mean as good.</summary>
    private const string OtherProof = "also_bump_variables_in_conflict_reasons:true";

    /// <summary>Looks for better solutions and proofs in many ways.</summary>
    /// <param name="better">Told of the starts of every better solution.</param>
    /// <returns>The solver's status and its proven bound on the objective.</returns>
    public (CpSolverStatus Status, double Bound, int[]? Starts) Run(ScheduleModel model, double until, double? work, Action<int[]>? better = null)
    {
        var workers = $"num_workers:{(work is null ? Math.Max(LeastWorkers, effort.Limits.Workers) : LeastWorkers)}";
        var repeat = work is null ? "" : $" interleave_search:true max_deterministic_time:{work:0.###}";
        return Run(model, $"{workers}{repeat} random_seed:{effort.Limits.Seed}", () => effort.SecondsPassed >= until, better);
    }

    /// <summary>Looks, on one core, for a proof that there is no solution.</summary>
    /// <param name="lane">Which of the searches that run side by side this is.</param>
    /// <param name="isEnough">Asked again and again: whether it is to stop.</param>
    public (CpSolverStatus Status, double Bound, int[]? Starts) Prove(ScheduleModel model, int lane, Func<bool> isEnough, Action<int[]> better) =>
        Run(model, $"{Proof} {(lane % 2 == 0 ? "" : OtherProof)} random_seed:{effort.Limits.Seed + lane}", isEnough, better);

    private (CpSolverStatus Status, double Bound, int[]? Starts) Run(ScheduleModel model, string parameters, Func<bool> isEnough, Action<int[]>? better)
    {
        using var solver = new CpSolver { StringParameters = parameters };
        using var listener = new Listener(solution => better?.Invoke(model.Timings.StartsIn(solution)));
        using var end = effort.Until(isEnough);
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
