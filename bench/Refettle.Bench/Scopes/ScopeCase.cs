using System.Diagnostics;
using Refettle.Access.Derivation;
using Refettle.Peers.Cars;
using Refettle.Peers.Solvers;
using Refettle.Scope;
using Refettle.Solvers;

namespace Refettle.Bench.Scopes;

/// <summary>One choice of jobs on one generated car, by the planner and its peers.</summary>
internal sealed record ScopeCase(
    ScopeAnswer Answer, int Facts, TimeSpan Solve, TimeSpan Choose, TimeSpan Explain, TimeSpan Frontier, int Points, List<PeerRun> Peers)
{
    public static ScopeCase Run(CarShape shape, int jobs, IReadOnlyCollection<ILimitedPeer> peers, TimeSpan most)
    {
        var car = CarGenerator.Make(shape);
        car = car with { Settings = car.Settings with { PerHour = new(60) }, Jobs = JobGenerator.Make(shape, jobs, shape.Seed) };
        var planner = new ScopePlanner(new ReducedSolver(new MixedIntegerSolver()), new MixedIntegerSolver());
        var question = Limited(planner, car);
        var problem = new ScopeProblem(car, question).Within(question.Time, question.Budget);
        var solver = new ReducedLimitedSolver(new ReducedSolver(new MixedIntegerSolver()), new MixedIntegerSolver());
        var answer = planner.Choose(car, question);
        var points = 0;
        return new(
            answer, problem.Problem.FactCount, Time(() => solver.Solve(problem)), Time(() => planner.Choose(car, question)),
            Time(() => planner.Explain(car, answer)),
            Time(() => points = planner.Frontier(car, question, ScopeLimit.Time).Count), points,
            [.. peers.Select(peer => peer.Solve(problem, most))]);
    }

    /// <summary>The time and money of the musts, and half of what else would be spent without limits.</summary>
    private static ScopeQuestion Limited(ScopePlanner planner, Car car)
    {
        var free = new ScopeQuestion { PerHour = car.Settings.PerHour, PerPoint = new(10) };
        var all = planner.Choose(car, free).Sum;
        var musts = planner.Choose(car with { Jobs = car.Jobs.Select(job => job with { Worth = null }).ToValueList() }, free).Sum;
        return free with
        {
            Hours = new(decimal.Ceiling((musts.Time + all.Time).Value / 2)),
            Budget = new(decimal.Ceiling((musts.Money.Amount + all.Money.Amount) / 2))
        };
    }

    private static TimeSpan Time(Action ask)
    {
        var clock = Stopwatch.StartNew();
        ask();
        return clock.Elapsed;
    }
}
