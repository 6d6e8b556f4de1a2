using Refettle.Access.Derivation;

namespace Refettle.Scope;

/// <summary>Finds which jobs go first when time or money run short.</summary>
internal sealed class Shortage(ScopeProblem problem, ScopeAnswer answer, LimitedCore core, CancellationToken cancel)
{
    // Where less can be had by other ways to open the same, that is tried so often before giving up.
    private const int MostRounds = 5;

    /// <summary>For what there is least of, the best that can be done with a hundredth less than is spent; none where only musts are left, or the search was ended.
    /// Where nothing is limited, for time and for money.</summary>
    public ValueList<DropFirst> First() =>
        new[] { ScopeLimit.Time, ScopeLimit.Money }.Where(IsShort).Select(Of).OfType<DropFirst>().ToValueList();

    private bool IsShort(ScopeLimit limit)
    {
        var (time, budget) = (answer.Question.Time, answer.Question.Budget);
        return (time is null && budget is null) || (limit == ScopeLimit.Time
            ? time is { } most && answer.Sum.Time.Value > most.Value * 0.9m
            : budget is { } money && answer.Sum.Money.Amount > money.Amount * 0.9m);
    }

    private DropFirst? Of(ScopeLimit limit)
    {
        var sum = answer.Sum;
        for (var round = 0; round < MostRounds; round++)
        {
            var less = core.Solve(Less(limit, sum), cancel);
            if (!less.IsOptimal)
                return null;
            sum = problem.SumOf(less);
            var jobs = problem.Jobs.Names(problem.JobsOf(less));
            if (answer.Chosen.Any(job => !jobs.Contains(job)))
                return Dropped(limit, jobs, less);
        }

        return null;
    }

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
