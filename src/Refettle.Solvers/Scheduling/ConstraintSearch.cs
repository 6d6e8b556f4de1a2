using Google.OrTools.Sat;
using Refettle.Timeline.Scheduling;

namespace Refettle.Solvers.Scheduling;

/// <summary>One run of CP-SAT, which can be stopped, tells of every better solution and comes again where that is wanted.</summary>
internal sealed class ConstraintSearch(Effort effort)
{
    /// <summary>More than there are cores: each worker searches in a way of its own, and a good mixture of ways matters more.</summary>
    private const int LeastWorkers = 8;

    /// <summary>Workers that learn clauses without linear relaxation and share out the tree among them. That conflicts are explained by
    /// integer bounds, and that no Boolean is made for each pair that cannot overlap in a cumulative, makes proofs four times as fast
    /// (published instances of 60 activities).</summary>
    private const string Proof =
        "subsolvers:\"shared_tree\" linearization_level:0 use_new_integer_conflict_resolution:true also_bump_variables_in_conflict_reasons:true use_disjunctive_constraint_in_cumulative:false";

    /// <summary>Looks for better solutions and proofs in many ways.</summary>
    /// <param name="better">Told of the starts of every better solution.</param>
    /// <returns>The solver's status and its proven bound on the objective.</returns>
    public (CpSolverStatus Status, double Bound, int[]? Starts) Run(
        ScheduleModel model, double until, double? work, Action<int[]>? better = null)
    {
        var workers = work is null ? Math.Max(LeastWorkers, effort.Limits.Workers) : LeastWorkers;
        var repeat = work is null ? "" : $"interleave_search:true max_deterministic_time:{work:0.###}";
        return Run(model, $"num_workers:{workers} {repeat}", until, better);
    }

    /// <summary>Looks for a proof that there is no solution.</summary>
    /// <param name="better">Told when there is one after all, and of every better one.</param>
    public (CpSolverStatus Status, double Bound, int[]? Starts) Prove(ScheduleModel model, double until, Action<int[]> better)
    {
        var workers = Math.Max(2, effort.Limits.Workers);
        return Run(model, $"num_workers:{workers} shared_tree_num_workers:{workers} {Proof}", until, better);
    }

    private (CpSolverStatus Status, double Bound, int[]? Starts) Run(
        ScheduleModel model, string parameters, double until, Action<int[]>? better)
    {
        using var solver = new CpSolver { StringParameters = $"{parameters} random_seed:{effort.Limits.Seed}" };
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
