using Refettle.Access.Derivation;

namespace Refettle.Scope;

/// <summary>Says whether one more job fits, before it is taken on.</summary>
internal sealed class Braking(Car car, ScopeQuestion question, IDerivationSolver free, ILimitedSolver forCores, CancellationToken cancel)
{
    public Brake Of(string job, ValueList<string> chosen)
    {
        // Nothing is ruled out here: a day that is too near is told as a breach.
        var problem =
            new ScopeProblem(car, question with { Until = null, Leave = question.Leave.Where(left => left != job).ToValueList() });
        var jobs = problem.Jobs;
        var number = jobs.NumberOf(job);
        var rest = jobs.Closed(chosen.Where(jobs.Knows).Select(jobs.NumberOf).Concat(jobs.Musts())
            .Where(other => !jobs.With[other].Contains(number)));
        var with = jobs.Closed(rest.Append(number));
        var breaches = Breaches(problem, number, with).ToValueList();
        return new(job, new Marginals(problem, free, cancel).Of(number, rest), breaches, breaches.Count == 0 ? [] : Room(job, jobs, with));
    }

    private IEnumerable<Breach> Breaches(ScopeProblem problem, int job, int[] with)
    {
        var days = problem.Jobs.With[job].Max(problem.Jobs.DaysOf);
        if (question.Until is { } until && days > until.Days)
            yield return new(ScopeLimit.Day, days, until.Days);
        var limited = problem.Within(problem.For(with), question.Time, question.Budget);
        if (free.Solve(limited.Problem, cancel) is not { WayOf: not null } answer || limited.IsKept(answer.WayOf) || Fits(limited))
            yield break;
        var sum = problem.SumOf(answer);
        if (question.Time is { } time && sum.Time > time)
            yield return new(ScopeLimit.Time, sum.Time.Value, time.Value);
        if (question.Budget is { } budget && sum.Money.Amount > budget.Amount)
            yield return new(ScopeLimit.Money, sum.Money.Amount, budget.Amount);
    }

    /// <summary>Whether dearer ways to open keep the limits where the cheapest do not.</summary>
    private bool Fits(LimitedProblem limited) => LimitedCore.Of(limited, free, forCores, cancel)?.Solve(cancel).WayOf is not null;

    /// <summary>What would go for it at least loss, of what is in.</summary>
    private ValueList<string>? Room(string job, JobList jobs, int[] with)
    {
        var names = jobs.Names(with);
        var leave = jobs.Jobs.Select(other => other.Id).Except(names).ToValueList();
        var problem = new ScopeProblem(car, question with { Also = question.Also.Append(job).Distinct().ToValueList(), Leave = leave });
        var answer = problem.Core(free, forCores, cancel)?.Solve(ScopeProblem.Most(question.Time, question.Budget), cancel);
        return answer?.WayOf is null ? null : names.Except(problem.Jobs.Names(problem.JobsOf(answer))).ToValueList();
    }
}
