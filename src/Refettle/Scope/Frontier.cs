using Refettle.Access.Derivation;

namespace Refettle.Scope;

/// <summary>The greatest gain for one limit after another.</summary>
internal sealed class Frontier(ScopeProblem problem, ScopeQuestion question, IDerivationSolver free, ILimitedSolver forCores, CancellationToken cancel)
{
    /// <summary>Evenly spaced from what the musts take to what all that is worth it takes; fewer when the search is ended early.</summary>
    public ValueList<FrontierPoint> Of(ScopeLimit limit, int most, IProgress<FrontierPoint>? found)
    {
        var points = new List<FrontierPoint>();
        if (problem.Core(free, forCores, cancel) is not { } core || free.Solve(problem.For(problem.Jobs.Musts()), cancel) is not { WayOf: not null } least)
            return [];
        var all = Solve(core, limit, null);
        var (from, to) = (Spent(limit, problem.SumOf(least)), all.WayOf is null ? 0 : Spent(limit, problem.SumOf(all)));
        for (var number = 0; number < most && !cancel.IsCancellationRequested; number++)
        {
            var at = decimal.Ceiling(from + ((to - from) * number / (most - 1)));
            if (Solve(core, limit, at) is not { IsOptimal: true } answer)
                continue;
            points.Add(Point(at, answer));
            found?.Report(points[^1]);
        }

        return points.ToValueList();
    }

    private static decimal Spent(ScopeLimit limit, ScopeSum sum) => limit == ScopeLimit.Time ? sum.Time.Value : sum.Money.Amount;

    private DerivationAnswer Solve(LimitedCore core, ScopeLimit limit, decimal? at)
    {
        var time = limit == ScopeLimit.Time ? at is { } minutes ? new Minutes(minutes) : null : question.Time;
        var money = limit == ScopeLimit.Money ? at is { } amount ? new Money(amount) : null : question.Budget;
        return core.Solve(ScopeProblem.Most(time, money), cancel);
    }

    private FrontierPoint Point(decimal at, DerivationAnswer answer)
    {
        var sum = problem.SumOf(answer);
        return new(at, problem.Jobs.Names(problem.JobsOf(answer)), sum, sum.Gain(problem.PerHour));
    }
}
