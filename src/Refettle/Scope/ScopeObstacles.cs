using Refettle.Access.Derivation;

namespace Refettle.Scope;

/// <summary>Says why the musts cannot all be done, and of what was not worked out that it was not.</summary>
internal static class ScopeObstacles
{
    private const string Ended = "the search was ended before a choice was found; whether there is one is not known";

    private const string NotWorkedOut = "the musts do not fit into what there is; how much they take at least was not worked out in time";

    /// <param name="isProven">No choice keeps the limits, or the musts cannot be done whatever is
    /// spent. Else nothing was found in time.</param>
    public static ValueList<string> Of(
        ScopeProblem problem, ScopeQuestion question, bool isProven, IDerivationSolver free, CancellationToken cancel)
    {
        var jobs = problem.Jobs;
        var musts = jobs.Musts();
        var isReachable = Closure.Derivable(problem.Problem);
        var lost = musts.Where(job => !isReachable[problem.WorkedFact(job)]).Select(job => Why(jobs, job, question)).ToValueList();
        if (lost.Count > 0)
            return lost;
        if (!isProven)
            return [Ended];
        var answer = free.Solve(problem.For(musts), cancel);
        return answer.IsOptimal ? Over(problem.SumOf(answer), question).ToValueList() : [NotWorkedOut];
    }

    private static string Why(JobList jobs, int job, ScopeQuestion question)
    {
        var name = jobs.Jobs[job].Name;
        return jobs.IsLeft(job) ? $"{name}: a must needs it, and it is to be left alone"
            : jobs.IsTooLong(job) ? $"{name}: its waits take {jobs.DaysOf(job):0.#} days, {question.Until!.Days} are left"
            : $"{name}: what has to be opened for it cannot be opened";
    }

    private static IEnumerable<string> Over(ScopeSum sum, ScopeQuestion question)
    {
        if (question.Time is { } time)
            yield return $"the musts take {sum.Time} at the least cost, and there are {time}";
        if (question.Budget is { } budget)
            yield return $"the musts take {sum.Money} in money at the least cost, and there are {budget}";
    }
}
