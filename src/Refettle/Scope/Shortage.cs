using Refettle.Access.Derivation;

namespace Refettle.Scope;

/// <summary>Finds which jobs go first when time or money run short.</summary>
internal sealed class Shortage(
    ScopeProblem problem, ScopeAnswer answer, IDerivationSolver free, ILimitedSolver forCores, CancellationToken cancel)
{
    private readonly int[] _wants = [.. answer.Chosen.Select(problem.Jobs.NumberOf).Except(problem.Jobs.Musts())];

    /// <summary>For what there is least of, the best of what takes a hundredth less than is spent and leaves
    /// at least one of the jobs; none where only musts are left, or the search was ended. Where nothing is
    /// limited, for time and for money.</summary>
    public ValueList<DropFirst> First()
    {
        var limits = new[] { ScopeLimit.Time, ScopeLimit.Money }.Where(IsShort).ToList();
        return _wants.Length == 0 || limits.Count == 0 || problem.CoreWithout(_wants, free, forCores, cancel) is not { } core ? []
            : limits.Select(limit => Of(limit, core)).OfType<DropFirst>().ToValueList();
    }

    private bool IsShort(ScopeLimit limit)
    {
        var (time, budget) = (answer.Question.Time, answer.Question.Budget);
        return (time is null && budget is null) || (limit == ScopeLimit.Time
            ? time is { } most && answer.Sum.Time.Value > most.Value * 0.9m
            : budget is { } money && answer.Sum.Money.Amount > money.Amount * 0.9m);
    }

    private DropFirst? Of(ScopeLimit limit, LimitedCore core) =>
        core.Solve([.. Less(limit, answer.Sum), _wants.Length - 1], cancel) is { IsOptimal: true } less
            ? Dropped(limit, problem.Jobs.Names(problem.JobsOf(less)), less)
            : null;

    private DropFirst Dropped(ScopeLimit limit, ValueList<string> jobs, DerivationAnswer less)
    {
        var sum = problem.SumOf(less);
        return new(
            limit, answer.Chosen.Except(jobs).ToValueList(), jobs.Except(answer.Chosen).ToValueList(),
            answer.Gain - sum.Gain(problem.PerHour), sum);
    }

    /// <summary>A hundredth less than is spent.</summary>
    private long[] Less(ScopeLimit limit, ScopeSum sum)
    {
        var question = answer.Question;
        var most = limit == ScopeLimit.Time ? ScopeProblem.Most(sum.Time, question.Budget) : ScopeProblem.Most(question.Time, sum.Money);
        var index = limit == ScopeLimit.Time ? 0 : 1;
        most[index] -= 1 + (most[index] / 100);
        return most;
    }
}
