using Refettle.Access.Derivation;

namespace Refettle.Scope;

/// <summary>The greatest gain for one limit after another.</summary>
internal sealed class Frontier(
    ScopeProblem problem, ScopeQuestion question, IDerivationSolver free, ILimitedSolver forCores, CancellationToken cancel)
{
    /// <summary>Evenly spaced from what the musts take to what all that is worth it takes; fewer when the search is ended early.</summary>
    /// <remarks>Two limits at a time, the even ones on one core of the problem and the odd ones on
    /// another: each core begins with what it found before, and the same question has the same answer
    /// however many processors there are.</remarks>
    public ValueList<FrontierPoint> Of(ScopeLimit limit, int most, IProgress<FrontierPoint>? found)
    {
        var points = new List<FrontierPoint>();
        if (problem.Core(free, forCores, cancel) is not { } even
            || free.Solve(problem.For(problem.Jobs.Musts()), cancel) is not { WayOf: not null } least)
            return [];
        var odd = even.Twin();
        var all = Solve(even, limit, null);
        var (from, to) = (Spent(limit, problem.SumOf(least)), all.WayOf is null ? 0 : Spent(limit, problem.SumOf(all)));
        foreach (var two in Enumerable.Range(0, most)
            .Select(number => (Core: number % 2 == 0 ? even : odd, At: decimal.Ceiling(from + ((to - from) * number / (most - 1)))))
            .Chunk(2))
        {
            if (cancel.IsCancellationRequested)
                break;
            foreach (var point in two.AsParallel().AsOrdered().Select(one => Best(one.Core, limit, one.At)).OfType<FrontierPoint>()
                .ToList())
            {
                points.Add(point);
                found?.Report(point);
            }
        }

        return points.ToValueList();
    }

    private FrontierPoint? Best(LimitedCore core, ScopeLimit limit, decimal at) =>
        Solve(core, limit, at) is { IsOptimal: true } answer ? Point(at, answer) : null;

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
