using System.Diagnostics;
using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Peers.Cars;
using Refettle.Peers.Solvers;
using Refettle.Solvers;

namespace Refettle.Bench.Derivations;

/// <summary>One question of one generated car, answered by the planner and its peers.</summary>
internal sealed record AccessCase(Plan Plan, DerivationProblem Problem, TimeSpan Solve, TimeSpan Question, List<PeerRun> Peers)
{
    public static AccessCase Run(CarShape shape, int goals, IEnumerable<IPeer> peers, TimeSpan most)
    {
        var car = CarGenerator.Make(shape);
        var question = new Question { Goals = CarGenerator.Goals(shape, goals) };
        var timed = new TimedSolver(new ReducedSolver(new MixedIntegerSolver()));
        using var end = new CancellationTokenSource(most);
        var clock = Stopwatch.StartNew();
        var plan = new AccessPlanner(timed).Reach(car, question, end.Token);
        var time = clock.Elapsed;
        return new(plan, timed.Problem!, timed.Time, time, [.. peers.Select(peer => peer.Solve(timed.Problem!, most))]);
    }

    /// <summary>What must not be: answers that are wrong or contradict each other.</summary>
    public IEnumerable<string> Contradictions(IReadOnlyList<IPeer> peers)
    {
        var cost = (long)(Plan.Cost.Total.Value * 100);
        for (var i = 0; i < peers.Count; i++)
        {
            var run = Peers[i];
            if (Plan.Status == PlanStatus.Optimal && run.IsProven && (run.IsFounded ? run.Cost != cost : run.Cost > cost))
                yield return $"{peers[i].Name} proves {run.Cost}, the planner {cost}";
        }
    }

    private sealed class TimedSolver(IDerivationSolver solver) : IDerivationSolver
    {
        public DerivationProblem? Problem { get; private set; }

        public TimeSpan Time { get; private set; }

        public DerivationAnswer Solve(DerivationProblem problem, CancellationToken cancel = default)
        {
            var clock = Stopwatch.StartNew();
            var answer = solver.Solve(problem, cancel);
            (Problem, Time) = (Problem ?? problem, Problem is null ? clock.Elapsed : Time);
            return answer;
        }
    }
}
