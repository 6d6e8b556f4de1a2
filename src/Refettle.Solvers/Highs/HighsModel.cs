using System.Runtime.InteropServices;

namespace Refettle.Solvers.Highs;

/// <summary>A minimisation over variables that are 0 or 1, solved by HiGHS; rows may be added between solves.</summary>
internal sealed class HighsModel : IDisposable
{
    private const int RowWise = 2;
    private const int Minimise = 1;
    private const int Infeasible = 8;
    private const int Optimal = 7;
    private const int FeasibleSolution = 2;

    private static readonly string[] Heuristics =
    [
        "mip_allow_restart", "mip_heuristic_run_rins", "mip_heuristic_run_rens", "mip_heuristic_run_root_reduced_cost",
        "mip_heuristic_run_feasibility_jump",
    ];

    // Checkpoints of the simplex, interior point and branch-and-bound loops.
    private static readonly int[] Interrupts = [1, 2, 6];

    private readonly nint _highs = HighsLibrary.Create();
    private readonly List<double> _cost = [];
    private readonly List<double> _least = [];
    private readonly List<double> _most = [];
    private readonly List<Row> _rows = [];
    private int _passedRows;
    private double[]? _start;

    public HighsModel()
    {
        // Costs are whole numbers: plans less than 1 apart cost the same. The default stops 0.01 % above the optimum.
        Check(HighsLibrary.SetOption(_highs, "output_flag", 0));
        Check(HighsLibrary.SetOption(_highs, "mip_rel_gap", 0.0));
        Check(HighsLibrary.SetOption(_highs, "mip_abs_gap", 0.5));
    }

    public int VariableCount => _cost.Count;

    public int RowCount => _rows.Count;

    /// <returns>The number of the new variable.</returns>
    public int AddVariable(double cost = 0, double least = 0, double most = 1)
    {
        _cost.Add(cost);
        _least.Add(least);
        _most.Add(most);
        return _cost.Count - 1;
    }

    public void SetCost(int variable, double cost) => _cost[variable] = cost;

    /// <summary>Least ≤ Σ coefficient × variable ≤ most; each variable at most once.</summary>
    public void AddRow(double least, double most, IEnumerable<(int Variable, double Coefficient)> terms)
    {
        var all = terms.ToArray();
        _rows.Add(new(least, most, Array.ConvertAll(all, term => term.Variable), Array.ConvertAll(all, term => term.Coefficient)));
    }

    /// <summary>Leaves out all heuristics that solve smaller models within the model: for who brings
    /// a good solution to begin with.</summary>
    /// <remarks>They take most of the time, and one of them writes to standard output whatever the options say.</remarks>
    public void LeaveOutHeuristics()
    {
        Check(HighsLibrary.SetOption(_highs, "mip_heuristic_effort", 0.0));
        foreach (var heuristic in Heuristics)
            Check(HighsLibrary.SetOption(_highs, heuristic, 0));
    }

    /// <summary>A solution to begin the next solve with: a value for each variable.</summary>
    public void Start(double[] values) => _start = values;

    public HighsOutcome Solve(CancellationToken cancel)
    {
        Pass();
        if (_start is not null)
            Check(HighsLibrary.SetSolution(_highs, _start, null, null, null));
        _start = null;
        HighsLibrary.Checkpoint stop = (_, _, _, input, _) =>
        {
            if (cancel.IsCancellationRequested && input != 0)
                Marshal.WriteInt32(input, 1);
        };
        Check(HighsLibrary.SetCallback(_highs, stop, 0));
        foreach (var interrupt in Interrupts)
            Check(HighsLibrary.StartCallback(_highs, interrupt));
        Check(HighsLibrary.Run(_highs));
        GC.KeepAlive(stop);
        return Outcome();
    }

    /// <summary>What one more unit of each row's most would save if variables could be broken: 0 or more;
    /// null when there is no solution.</summary>
    public double[]? Prices()
    {
        Pass();
        Check(HighsLibrary.SetOption(_highs, "solve_relaxation", 1));
        Check(HighsLibrary.Run(_highs));
        Check(HighsLibrary.SetOption(_highs, "solve_relaxation", 0));
        if (HighsLibrary.ModelStatus(_highs) != Optimal)
            return null;
        var duals = new double[_rows.Count];
        Check(HighsLibrary.Solution(_highs, new double[_cost.Count], new double[_cost.Count], new double[_rows.Count], duals));
        return Array.ConvertAll(duals, dual => Math.Max(0, -dual));
    }

    public void Dispose() => HighsLibrary.Destroy(_highs);

    private void Pass()
    {
        if (_passedRows == 0)
        {
            var entries = 0;
            var starts = _rows.ConvertAll(row => (entries += row.Variables.Length) - row.Variables.Length);
            Check(HighsLibrary.PassModel(
                _highs, _cost.Count, _rows.Count, entries, RowWise, Minimise, 0, [.. _cost], [.. _least], [.. _most],
                [.. _rows.Select(row => row.Least)], [.. _rows.Select(row => row.Most)], [.. starts],
                [.. _rows.SelectMany(row => row.Variables)], [.. _rows.SelectMany(row => row.Coefficients)],
                [.. Enumerable.Repeat(1, _cost.Count)]));
        }
        else
        {
            foreach (var row in _rows[_passedRows..])
                Check(HighsLibrary.AddRow(_highs, row.Least, row.Most, row.Variables.Length, row.Variables, row.Coefficients));
        }

        _passedRows = _rows.Count;
    }

    private HighsOutcome Outcome()
    {
        var status = HighsLibrary.ModelStatus(_highs);
        if (status == Infeasible)
            return new(null, double.PositiveInfinity, true);
        Check(HighsLibrary.Info(_highs, "mip_dual_bound", out double bound));
        Check(HighsLibrary.Info(_highs, "primal_solution_status", out int found));
        if (found != FeasibleSolution)
            return new(null, bound, false);
        var values = new double[_cost.Count];
        Check(HighsLibrary.Solution(_highs, values, new double[_cost.Count], new double[_rows.Count], new double[_rows.Count]));
        return new(values, bound, status == Optimal);
    }

    // 0 is success, 1 a warning (a limit or a stop was met).
    private static void Check(int status)
    {
        if (status is not (0 or 1))
            throw new InvalidOperationException($"HiGHS refused a call (status {status}).");
    }

    private sealed record Row(double Least, double Most, int[] Variables, double[] Coefficients);
}

/// <summary>What HiGHS found.</summary>
/// <param name="Values">The variables' values; null when there is no solution, or none was found in time.</param>
/// <param name="Bound">No solution costs less; infinite when there is none.</param>
/// <param name="IsFinished">It was not stopped early.</param>
internal sealed record HighsOutcome(double[]? Values, double Bound, bool IsFinished);
