using Refettle.Access.Derivation;

namespace Refettle.Scope;

/// <summary>Finds what a job shares with the others.</summary>
internal static class Sharing
{
    /// <summary>Of what comes off for the job and is off without it too, the thing that takes most to
    /// get off; null when there is none.</summary>
    public static Fact? Largest(ScopeProblem problem, int job, DerivationAnswer without, DerivationAnswer with)
    {
        var shared = Support(problem, with, problem.Jobs.Jobs[job].Goals.Select(problem.NumberOf).Where(fact => fact >= 0))
            .Where(fact => fact < problem.AccessFacts && without.WayOf![fact] >= 0 && problem.FactOf(fact).Kind == FactKind.Off).ToList();
        return shared.Count == 0 ? null : problem.FactOf(shared.MaxBy(fact => (CostOf(problem, without, fact), -fact)));
    }

    private static long CostOf(ScopeProblem problem, DerivationAnswer answer, int fact) =>
        Support(problem, answer, [fact]).Sum(support => problem.Problem.Cost[answer.WayOf![support]]);

    /// <summary>The facts that an answer makes true for some, themselves included.</summary>
    private static HashSet<int> Support(ScopeProblem problem, DerivationAnswer answer, IEnumerable<int> facts)
    {
        var support = new HashSet<int>();
        var next = new Stack<int>(facts);
        while (next.TryPop(out var fact))
        {
            if (!support.Add(fact))
                continue;
            foreach (var need in problem.Problem.Needs[answer.WayOf![fact]])
                next.Push(need);
        }

        return support;
    }
}
