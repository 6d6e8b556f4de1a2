using Google.OrTools.ModelBuilder;
using Refettle.Access.Derivation;

namespace Refettle.Solvers;

/// <summary>A derivation problem as a mixed-integer model with aggregated links.</summary>
/// <remarks>
/// x(f) is 1 when fact f is made true, y(w) when way w is chosen. For each fact the sum of its ways' y is its x; for each fact f and each
/// need r of it, the sum of y over the ways of f that need r is at most x(r); goals have x = 1. Circular support is cut:
/// of any set of facts, none is true unless a way that needs nothing of the set is chosen for one of them.
/// </remarks>
internal sealed class DerivationModel : IDisposable
{
    private readonly DerivationProblem _problem;
    private readonly ModelBuilderHelper _model = new();
    private readonly int[] _fact;
    private readonly int[] _way;
    private readonly bool[] _isGoal;

    public DerivationModel(DerivationProblem problem)
    {
        _problem = problem;
        _fact = new int[problem.FactCount];
        _way = new int[problem.WayCount];
        _isGoal = new bool[problem.FactCount];
        foreach (var goal in problem.Goals)
            _isGoal[goal] = true;
        AddVariables();
        for (var fact = 0; fact < problem.FactCount; fact++)
            AddLinks(fact);
    }

    public ModelBuilderHelper Model => _model;

    public void Dispose() => _model.Dispose();

    /// <summary>Cuts circular support within a set of facts.</summary>
    public void Cut(IReadOnlyCollection<int> circle)
    {
        var inside = circle.ToHashSet();
        var support = circle.SelectMany(fact => _problem.WaysOf(fact).ToArray())
            .Where(way => !_problem.Needs[way].Any(inside.Contains)).Select(way => _way[way]).ToList();
        foreach (var fact in circle.Where(fact => !support.Contains(_fact[fact])))
        {
            var row = Row(double.NegativeInfinity, 0);
            _model.AddConstraintTerm(row, _fact[fact], 1);
            foreach (var variable in support)
                _model.AddConstraintTerm(row, variable, -1);
        }
    }

    /// <summary>The ways that a solution chooses, by fact.</summary>
    public int[] WayOf(ModelSolverHelper solver)
    {
        var wayOf = new int[_problem.FactCount];
        Array.Fill(wayOf, -1);
        for (var way = 0; way < _problem.WayCount; way++)
        {
            if (solver.VariableValue(_way[way]) > 0.5)
                wayOf[_problem.FactOf[way]] = way;
        }

        return wayOf;
    }

    private void AddVariables()
    {
        for (var fact = 0; fact < _problem.FactCount; fact++)
        {
            var ways = _problem.WaysOf(fact);
            _fact[fact] = Variable(_isGoal[fact] ? 1 : 0, ways.Length == 0 ? 0 : 1);
            if (ways.Length == 1)
            {
                _way[ways[0]] = _fact[fact];
                _model.SetVarObjectiveCoefficient(_fact[fact], _problem.Cost[ways[0]]);
                continue;
            }

            var row = Row(0, 0);
            _model.AddConstraintTerm(row, _fact[fact], -1);
            foreach (var way in ways)
            {
                _way[way] = Variable(0, 1);
                _model.SetVarObjectiveCoefficient(_way[way], _problem.Cost[way]);
                _model.AddConstraintTerm(row, _way[way], 1);
            }
        }
    }

    private void AddLinks(int fact)
    {
        var users = new Dictionary<int, List<int>>();
        foreach (var way in _problem.WaysOf(fact))
        {
            foreach (var need in _problem.Needs[way].Where(need => !_isGoal[need] && need != fact))
            {
                if (!users.TryGetValue(need, out var ways))
                    users.Add(need, ways = []);
                ways.Add(way);
            }
        }

        foreach (var (need, ways) in users)
        {
            var row = Row(double.NegativeInfinity, 0);
            _model.AddConstraintTerm(row, _fact[need], -1);
            foreach (var way in ways)
                _model.AddConstraintTerm(row, _way[way], 1);
        }
    }

    private int Variable(double least, double most)
    {
        var variable = _model.AddVar();
        _model.SetVarLowerBound(variable, least);
        _model.SetVarUpperBound(variable, most);
        _model.SetVarIntegrality(variable, true);
        return variable;
    }

    private int Row(double least, double most)
    {
        var row = _model.AddLinearConstraint();
        _model.SetConstraintLowerBound(row, least);
        _model.SetConstraintUpperBound(row, most);
        return row;
    }
}
