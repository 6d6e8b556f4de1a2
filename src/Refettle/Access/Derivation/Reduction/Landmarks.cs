namespace Refettle.Access.Derivation.Reduction;

/// <summary>Finds facts that every solution makes true though no single way calls for them, and makes them goals.</summary>
/// <remarks>Such facts are called landmarks in planning: a fact is one when the goals cannot be derived without it
/// (Hoffmann, Porteous, Sebastia, Ordered landmarks in planning, JAIR 22 (2004)).</remarks>
internal static class Landmarks
{
    // Each candidate costs one pass over the core.
    private const long MostWork = 20_000_000;

    /// <returns>The core with more goals, or the same core when there are none to add.</returns>
    public static Core Add(Core core, IReadOnlyList<int> candidates)
    {
        var problem = core.Problem;
        if ((long)candidates.Count * (problem.WayCount + problem.FactCount) > MostWork)
            return core;
        var found = candidates.Where(fact => !problem.Goals.Contains(fact) && IsLandmark(problem, fact)).ToArray();
        return found.Length == 0
            ? core
            : core with
            {
                Problem = new(problem.FactCount, [.. problem.FactOf], [.. problem.Needs.Select(needs => needs.ToArray())],
                    [.. problem.Cost], [.. problem.Goals, .. found]),
            };
    }

    private static bool IsLandmark(DerivationProblem problem, int fact)
    {
        var derivable = Closure.Derivable(problem, without: fact);
        return problem.Goals.Any(goal => !derivable[goal]);
    }
}
