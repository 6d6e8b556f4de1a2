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

    // Checkpoints of the simplex, interior point and branch-and-bound loops.
    private static readonly int[] Interrupts = [1, 2, 6];

    private readonly nint _highs = HighsLibrary.Create();
    private readonly List<double> _cost = [];
    private readonly List<double> _least = [];
    private readonly List<double> _most = [];
    private readonly List<Row> _rows = [];
    private int _passedRows;

    public HighsModel()
    {
        // Costs are whole numbers: plans less than 1 apart cost the same. The default stops 0.01 % above the optimum.
        Check(HighsLibrary.SetOption(_highs, "output_flag", 0));
        Check(HighsLibrary.SetOption(_highs, "mip_rel_gap", 0.0));
        Check(HighsLibrary.SetOption(_highs, "mip_abs_gap", 0.5));
    }

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

    public HighsOutcome Solve(CancellationToken cancel)
    {
        Pass();
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
