using Google.OrTools.ModelBuilder;
using Refettle.Access.Derivation;

namespace Refettle.Peers.Solvers;

/// <summary>The whole problem as a mixed-integer model with aggregated links, for HiGHS through OR-Tools' ModelBuilder.</summary>
/// <remarks>Variables 0 … facts-1 say that a fact is made true, the rest that a way is chosen. Circular
/// support is allowed until it is cut.</remarks>
internal sealed class AggregatedModel : IDisposable
{
    private readonly DerivationProblem _problem;
    private readonly ModelBuilderHelper _model = new();

    public AggregatedModel(DerivationProblem problem, params IEnumerable<UseLimit> limits)
    {
        _problem = problem;
        var goals = problem.Goals.ToHashSet();
        for (var fact = 0; fact < problem.FactCount; fact++)
            AddVariable(goals.Contains(fact) ? 1 : 0, 0);
        foreach (var cost in problem.Cost)
            AddVariable(0, cost);
        for (var fact = 0; fact < problem.FactCount; fact++)
            AddFact(fact);
        foreach (var limit in limits)
            AddLimit(limit);
    }

    public void Dispose() => _model.Dispose();

    /// <summary>One solve to the end of the time, with one or all threads left to HiGHS.</summary>
    /// <returns>The ways chosen, and whether they are proven best; null when none were found.</returns>
    public (int[]? WayOf, bool IsProven, bool IsImpossible) Solve(TimeSpan most)
    {
        using var solver = new ModelSolverHelper("highs");
        solver.SetSolverSpecificParameters("mip_rel_gap=0,mip_abs_gap=0.5,output_flag=false");
        solver.SetTimeLimitInSeconds(most.TotalSeconds);
        solver.Solve(_model);
        if (!solver.HasSolution())
            return (null, false, solver.Status() == SolveStatus.INFEASIBLE);
        var wayOf = new int[_problem.FactCount];
        Array.Fill(wayOf, -1);
        for (var way = 0; way < _problem.WayCount; way++)
        {
            if (solver.VariableValue(_problem.FactCount + way) > 0.5)
                wayOf[_problem.FactOf[way]] = way;
        }

        return (wayOf, solver.Status() == SolveStatus.OPTIMAL, false);
    }

    /// <summary>Of facts that only support each other, none is true unless one is made true by a way that needs none of them.</summary>
    public void Cut(HashSet<int> circle)
    {
        var outside = circle.SelectMany(fact => _problem.WaysOf(fact).ToArray())
            .Where(way => !_problem.Needs[way].Any(circle.Contains)).ToList();
        foreach (var fact in circle)
        {
            var row = AddRow(double.NegativeInfinity, 0);
            _model.AddConstraintTerm(row, fact, 1);
            foreach (var way in outside)
                _model.AddConstraintTerm(row, _problem.FactCount + way, -1);
        }
    }

    private void AddFact(int fact)
    {
        var ways = _problem.WaysOf(fact).ToArray();
        var sum = AddRow(0, 0);
        _model.AddConstraintTerm(sum, fact, -1);
        foreach (var way in ways)
            _model.AddConstraintTerm(sum, _problem.FactCount + way, 1);
        foreach (var users in ways.SelectMany(way => _problem.Needs[way], (way, need) => (way, need))
            .GroupBy(pair => pair.need, pair => pair.way))
        {
            var link = AddRow(double.NegativeInfinity, 0);
            _model.AddConstraintTerm(link, users.Key, -1);
            foreach (var way in users)
                _model.AddConstraintTerm(link, _problem.FactCount + way, 1);
        }
    }

    private void AddLimit(UseLimit limit)
    {
        var row = AddRow(double.NegativeInfinity, limit.Most);
        for (var way = 0; way < _problem.WayCount; way++)
            _model.AddConstraintTerm(row, _problem.FactCount + way, limit.Use[way]);
    }

    private void AddVariable(double least, double cost)
    {
        var variable = _model.AddVar();
        _model.SetVarLowerBound(variable, least);
        _model.SetVarUpperBound(variable, 1);
        _model.SetVarIntegrality(variable, true);
        _model.SetVarObjectiveCoefficient(variable, cost);
    }

    private int AddRow(double least, double most)
    {
        var row = _model.AddLinearConstraint();
        _model.SetConstraintLowerBound(row, least);
        _model.SetConstraintUpperBound(row, most);
        return row;
    }
}
