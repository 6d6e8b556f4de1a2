using Google.OrTools.Sat;
using Refettle.Access.Derivation;

namespace Refettle.Peers.Solvers;

/// <summary>A constraint model in which each fact has a place in the order and every need comes before what needs it.</summary>
public sealed class OrderedCpSat : ILimitedPeer
{
    public string Name => "CP-SAT";

    public string About => "order variables, implications from way to need, 2 workers, given the ways alone";

    public PeerRun Solve(DerivationProblem problem, TimeSpan most) => Solve(new LimitedProblem(problem, []), most);

    public PeerRun Solve(LimitedProblem limited, TimeSpan most) => PeerRun.Of(limited.Problem, most, () =>
    {
        var problem = limited.Problem;
        var model = new CpModel();
        var isTrue = Enumerable.Range(0, problem.FactCount).Select(_ => model.NewBoolVar("")).ToArray();
        var isChosen = Enumerable.Range(0, problem.WayCount).Select(_ => model.NewBoolVar("")).ToArray();
        var place = Enumerable.Range(0, problem.FactCount).Select(_ => model.NewIntVar(0, problem.FactCount - 1, "")).ToArray();
        for (var fact = 0; fact < problem.FactCount; fact++)
            model.Add(LinearExpr.Sum(problem.WaysOf(fact).ToArray().Select(way => isChosen[way])) == isTrue[fact]);
        for (var way = 0; way < problem.WayCount; way++)
        {
            foreach (var need in problem.Needs[way])
            {
                model.AddImplication(isChosen[way], isTrue[need]);
                model.Add(place[problem.FactOf[way]] >= place[need] + 1).OnlyEnforceIf(isChosen[way]);
            }
        }

        foreach (var goal in problem.Goals)
            model.Add(isTrue[goal] == 1);
        foreach (var limit in limited.Limits)
            model.Add(LinearExpr.WeightedSum(isChosen, limit.Use) <= limit.Most);
        model.Minimize(LinearExpr.WeightedSum(isChosen, problem.Cost));
        return Run(model, problem, isChosen, most);
    });

    private static (int[]? WayOf, bool IsProven) Run(CpModel model, DerivationProblem problem, BoolVar[] isChosen, TimeSpan most)
    {
        var solver = new CpSolver { StringParameters = $"num_workers:2,max_time_in_seconds:{most.TotalSeconds},random_seed:1" };
        var status = solver.Solve(model);
        if (status is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible))
            return (null, status == CpSolverStatus.Infeasible);
        var wayOf = new int[problem.FactCount];
        Array.Fill(wayOf, -1);
        for (var way = 0; way < problem.WayCount; way++)
        {
            if (solver.BooleanValue(isChosen[way]))
                wayOf[problem.FactOf[way]] = way;
        }

        return (wayOf, status == CpSolverStatus.Optimal);
    }
}
