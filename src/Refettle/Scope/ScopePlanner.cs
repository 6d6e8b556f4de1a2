using Refettle.Access;
using Refettle.Access.Derivation;

namespace Refettle.Scope;

/// <summary>Chooses jobs by a least-cost derivation with limits.</summary>
/// <param name="free">Finds the least cost without limits.</param>
/// <param name="forCores">Finds it within limits, once the problem is reduced.</param>
public sealed class ScopePlanner(IDerivationSolver free, ILimitedSolver forCores) : IScopePlanner
{
    public ScopeAnswer Choose(Car car, ScopeQuestion question, CancellationToken cancel = default)
    {
        var problem = new ScopeProblem(car, question);
        var core = problem.Core(free, forCores, cancel);
        var answer = core?.Solve(ScopeProblem.Most(question.Time, question.Budget), cancel);
        var scope = answer?.WayOf is null
            ? new()
            {
                Question = question,
                Status = PlanStatus.Impossible,
                Obstacles = ScopeObstacles.Of(problem, question, isProven: answer is { Bound: long.MaxValue }, free, cancel)
            }
            : Answer(problem, question, answer, core!.Unlimited, cancel);
        var faults = ScopeCheck.Of(car, scope);
        return faults.Count == 0 ? scope : throw new InvalidOperationException("The scope does not add up: " + faults[0]);
    }

    public ScopeReasons Explain(Car car, ScopeAnswer answer, CancellationToken cancel = default)
    {
        if (answer.Status == PlanStatus.Impossible)
            return new([], []);
        var problem = new ScopeProblem(car, answer.Question);
        var costs = new Marginals(problem, free, cancel).Of(answer.Chosen.Select(problem.Jobs.NumberOf).ToArray());
        return new(costs, new Shortage(problem, answer, free, forCores, cancel).First());
    }

    public ValueList<FrontierPoint> Frontier(
        Car car, ScopeQuestion question, ScopeLimit limit, int most = 20, IProgress<FrontierPoint>? found = null,
        CancellationToken cancel = default) =>
        new Frontier(new(car, question), question, free, forCores, cancel).Of(limit, most, found);

    public Brake Add(Car car, ScopeQuestion question, string job, ValueList<string>? beside = null, CancellationToken cancel = default)
    {
        var chosen = beside ?? (car.Scope is { Count: > 0 } scope ? scope : Choose(car, question, cancel).Chosen);
        return new Braking(car, question, free, forCores, cancel).Of(job, chosen);
    }

    private ScopeAnswer Answer(
        ScopeProblem problem, ScopeQuestion question, DerivationAnswer answer, DerivationAnswer unlimited, CancellationToken cancel)
    {
        var jobs = problem.JobsOf(answer);
        var plan = new AccessPlanner(free).Reach(problem.Standing.Car, new() { Goals = problem.Jobs.Goals(jobs) }, cancel);
        var sum = Accounts.Of(problem.Standing, plan, jobs.Select(job => (problem.Jobs.Jobs[job], problem.Jobs.WorthOf(job))));
        if (sum.Time > question.Time || sum.Money.Amount > question.Budget?.Amount
            || sum.Gain(question.PerHour) < problem.SumOf(answer).Gain(question.PerHour))
            (plan, sum) = (problem.PlanOf(answer, plan.Bound), problem.SumOf(answer));
        var gain = sum.Gain(question.PerHour);
        return new()
        {
            Question = question,
            Status = answer.IsOptimal ? PlanStatus.Optimal : PlanStatus.Feasible,
            Chosen = problem.Jobs.Names(jobs),
            Left = Leaving.Of(problem, jobs, unlimited),
            Sum = sum,
            Gain = gain,
            Bound = answer.IsOptimal ? gain : gain + ((answer.Cost - answer.Bound) / 100m),
            Plan = plan,
        };
    }
}
