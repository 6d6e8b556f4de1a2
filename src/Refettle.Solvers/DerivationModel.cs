using System.Numerics;
using Refettle.Access.Derivation;
using Refettle.Solvers.Highs;

namespace Refettle.Solvers;

/// <summary>A derivation problem as a mixed-integer model with aggregated links.</summary>
/// <remarks>
/// x(f) is 1 when fact f is made true, y(w) when way w is chosen. For each fact the sum of its ways' y is its x; for each fact f and each
/// need r of it, the sum of y over the ways of f that need r is at most x(r); goals have x = 1; what is used up is the
/// sum of use × y. Circular support is cut: of any set of facts, none is true unless a way that needs
/// nothing of the set is chosen for one of them.
/// </remarks>
internal sealed class DerivationModel : IDisposable
{
    private readonly DerivationProblem _problem;
    private readonly HighsModel _model = new();
    private readonly int[] _fact;
    private readonly int[] _way;
    private readonly bool[] _isGoal;
    private readonly int _firstLimit;
    private readonly List<long> _units = [];

    public DerivationModel(DerivationProblem problem, IEnumerable<UseLimit> limits)
    {
        _problem = problem;
        _fact = new int[problem.FactCount];
        _way = new int[problem.WayCount];
        _isGoal = new bool[problem.FactCount];
        foreach (var goal in problem.Goals)
            _isGoal[goal] = true;
        for (var fact = 0; fact < problem.FactCount; fact++)
            AddVariables(fact);
        for (var fact = 0; fact < problem.FactCount; fact++)
            AddLinks(fact);
        _firstLimit = _model.RowCount;
        foreach (var limit in limits)
            AddLimit(limit);
    }

    public HighsOutcome Solve(CancellationToken cancel) => _model.Solve(cancel);

    public void LeaveOutHeuristics() => _model.LeaveOutHeuristics();

    /// <summary>Begins the next solve with a solution that is known.</summary>
    public void Start(int[] wayOf)
    {
        var values = new double[_model.VariableCount];
        foreach (var way in wayOf.Where(way => way >= 0))
            values[_way[way]] = values[_fact[_problem.FactOf[way]]] = 1;
        _model.Start(values);
    }

    /// <summary>What one unit more of each limit would save, were facts divisible; null when the limits cannot be kept.</summary>
    public double[]? Prices() => _model.Prices()?.Skip(_firstLimit).Select((price, limit) => price / _units[limit]).ToArray();

    public void Dispose() => _model.Dispose();

    /// <summary>Cuts circular support within a set of facts.</summary>
    public void Cut(IReadOnlyCollection<int> circle)
    {
        var inside = circle.ToHashSet();
        var support = circle.SelectMany(fact => _problem.WaysOf(fact).ToArray())
            .Where(way => !_problem.Needs[way].Any(inside.Contains)).Select(way => _way[way]).ToHashSet();
        foreach (var fact in circle.Where(fact => !support.Contains(_fact[fact])))
            _model.AddRow(-HighsLibrary.Infinity, 0, support.Select(variable => (variable, -1.0)).Prepend((_fact[fact], 1.0)));
    }

    /// <summary>The ways that a solution chooses, by fact.</summary>
    public int[] WayOf(double[] values)
    {
        var wayOf = new int[_problem.FactCount];
        Array.Fill(wayOf, -1);
        for (var way = 0; way < _problem.WayCount; way++)
        {
            if (values[_way[way]] > 0.5)
                wayOf[_problem.FactOf[way]] = way;
        }

        return wayOf;
    }

    /// <summary>A fact with one way shares its variable with it.</summary>
    private void AddVariables(int fact)
    {
        var ways = _problem.WaysOf(fact);
        _fact[fact] = _model.AddVariable(least: _isGoal[fact] ? 1 : 0, most: ways.Length == 0 ? 0 : 1);
        if (ways.Length == 1)
        {
            _way[ways[0]] = _fact[fact];
            _model.SetCost(_fact[fact], _problem.Cost[ways[0]]);
            return;
        }

        var terms = new List<(int, double)> { (_fact[fact], -1) };
        foreach (var way in ways)
            terms.Add((_way[way] = _model.AddVariable(_problem.Cost[way]), 1));
        _model.AddRow(0, 0, terms);
    }

    /// <summary>Whole numbers, as small as they can be: solvers let rows be missed by an absolute amount.</summary>
    private void AddLimit(UseLimit limit)
    {
        var unit = Math.Max(1, limit.Use.Aggregate(0L, (unit, use) => (long)BigInteger.GreatestCommonDivisor(unit, use)));
        var terms = Enumerable.Range(0, _problem.WayCount).Where(way => limit.Use[way] != 0)
            .Select(way => (_way[way], (double)(limit.Use[way] / unit)));
        _model.AddRow(-HighsLibrary.Infinity, Math.Floor(limit.Most / (double)unit), terms);
        _units.Add(unit);
    }

    private void AddLinks(int fact)
    {
        var users = new Dictionary<int, List<(int, double)>>();
        foreach (var way in _problem.WaysOf(fact))
        {
            foreach (var need in _problem.Needs[way].Where(need => !_isGoal[need] && need != fact))
            {
                if (!users.TryGetValue(need, out var terms))
                    users.Add(need, terms = [(_fact[need], -1)]);
                terms.Add((_way[way], 1));
            }
        }

        foreach (var terms in users.Values)
            _model.AddRow(-HighsLibrary.Infinity, 0, terms);
    }
}
