using Refettle.Access.Derivation;

namespace Refettle.Scope;

/// <summary>Says why jobs are left.</summary>
internal static class Leaving
{
    /// <param name="problem">The problem.</param>
    /// <param name="chosen">The jobs that are in.</param>
    /// <param name="unlimited">The best choice without limits of time and money.</param>
    public static ValueList<LeftJob> Of(ScopeProblem problem, int[] chosen, DerivationAnswer unlimited)
    {
        var isReachable = Closure.Derivable(problem.Problem);
        var jobs = problem.Jobs;
        return Enumerable.Range(0, jobs.Jobs.Length).Except(chosen).Select(job => new LeftJob(jobs.Jobs[job].Id, Why(job))).ToValueList();

        WhyLeft Why(int job) =>
            jobs.IsLeft(job) ? WhyLeft.LeftAlone
            : jobs.With[job].Any(jobs.IsTooLong) ? WhyLeft.WaitsTooLong
            : !jobs.With[job].All(needed => isReachable[problem.WorkedFact(needed)]) ? WhyLeft.OutOfReach
            : unlimited.WayOf![problem.WorkedFact(job)] >= 0 ? WhyLeft.NoRoom
            : WhyLeft.NotWorthIt;
    }
}
