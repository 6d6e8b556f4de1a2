namespace Refettle.Access.Derivation.Reduction;

/// <summary>Finds facts that every solution makes true though no single way calls for them, and makes them goals.</summary>
/// <remarks>Such facts are called landmarks in planning: a fact is one when the goals cannot be derived without it
/// (Hoffmann, Porteous, Sebastia, Ordered landmarks in planning, JAIR 22 (2004)).</remarks>
internal static class Landmarks
{
    // Facts looked at before giving up: what is not found here is left to the search.
    private const long MostWork = 20_000_000;

    /// <returns>The core with more goals, or the same core when there are none to add.</returns>
    public static Core Add(Core core)
    {
        var problem = core.Problem;
        var alone = CheapestAlone.Of(problem);
        var reliance = new Reliance(problem, alone);
        var isGoal = new bool[problem.FactCount];
        foreach (var goal in problem.Goals)
            isGoal[goal] = true;
        var found = new List<int>();
        foreach (var fact in Closure.Supported(problem, alone.Way)!)
        {
            if (isGoal[fact] || reliance.Work > MostWork)
                continue;
            reliance.Without(fact);
            if (problem.Goals.Any(reliance.IsLost))
                found.Add(fact);
        }

        return found.Count == 0
            ? core
            : core with
            {
                Problem = new(problem.FactCount, [.. problem.FactOf], [.. problem.Needs.Select(needs => needs.ToArray())],
                    [.. problem.Cost], [.. problem.Goals, .. found]),
            };
    }
}
