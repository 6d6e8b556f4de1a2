using Refettle.Access.Derivation;

namespace Refettle.Scope;

/// <summary>Says why the musts cannot all be done.</summary>
internal static class ScopeObstacles
{
    public static ValueList<string> Of(ScopeProblem problem, ScopeQuestion question, IDerivationSolver free, CancellationToken cancel)
    {
        var jobs = problem.Jobs;
        var musts = jobs.Musts();
        var isReachable = Closure.Derivable(problem.Problem);
        var lost = musts.Where(job => !isReachable[problem.WorkedFact(job)]).Select(job => Why(jobs, job, question)).ToValueList();
        if (lost.Count > 0)
            return lost;
        var answer = free.Solve(problem.For(musts), cancel);
        return answer.WayOf is null ? ["no plan for the musts was found"] : Over(problem.SumOf(answer), question).ToValueList();
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
