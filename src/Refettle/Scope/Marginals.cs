using Refettle.Access.Derivation;

namespace Refettle.Scope;

/// <summary>What each job takes given the rest: the least cost with it less the least cost without it.</summary>
internal sealed class Marginals(ScopeProblem problem, IDerivationSolver free, CancellationToken cancel)
{
    private readonly JobList _jobs = problem.Jobs;

    /// <summary>The jobs that are in, and those that could come in, in the order of their names; those only whose figures are proven, so
    /// a search that is ended early gives fewer.</summary>
    public ValueList<JobCost> Of(int[] chosen)
    {
        if (Solve(chosen) is not { } all)
            return [];
        return Enumerable.Range(0, _jobs.Jobs.Length).AsParallel().AsOrdered().Select(job => Of(job, chosen, all)).OfType<JobCost>()
            .ToValueList();
    }

    public JobCost? Of(int job, int[] chosen) => Solve(chosen) is { } all ? Of(job, chosen, all) : null;

    private JobCost? Of(int job, int[] chosen, DerivationAnswer all)
    {
        if (chosen.Contains(job))
            return Between(job, Solve([.. chosen.Where(other => !_jobs.With[other].Contains(job))]), all, isIn: true);
        return Between(job, all, Solve([.. _jobs.Closed(chosen.Append(job))]), isIn: false);
    }

    /// <summary>The difference of two figures that are not the least says nothing: null then.</summary>
    private DerivationAnswer? Solve(int[] jobs) =>
        !cancel.IsCancellationRequested && free.Solve(problem.For(jobs), cancel) is { IsOptimal: true } answer ? answer : null;

    private JobCost? Between(int job, DerivationAnswer? without, DerivationAnswer? with, bool isIn)
    {
        if (without is null || with is null)
            return null;
        var along = problem.JobsOf(with).Except(problem.JobsOf(without)).Where(other => other != job);
        return new(
            _jobs.Jobs[job].Id, isIn, Less(problem.SumOf(with), problem.SumOf(without)), _jobs.Names(along),
            Sharing.Largest(problem, job, without, with));
    }

    private static ScopeSum Less(ScopeSum more, ScopeSum less) => new(
        more.Worth - less.Worth, new(more.Money.Amount - less.Money.Amount), more.Opening - less.Opening, more.Work - less.Work,
        more.Unique - less.Unique);
}
