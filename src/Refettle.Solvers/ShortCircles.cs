using Refettle.Access.Derivation;

namespace Refettle.Solvers;

/// <summary>Lists circles of requirement: fact needs fact needs … the first fact again.</summary>
internal static class ShortCircles
{
    private const int Most = 20_000;

    /// <summary>Each circle of at most so many facts once, up to 20,000 circles.</summary>
    public static IEnumerable<List<int>> Of(DerivationProblem problem, int longest)
    {
        var needs = Enumerable.Range(0, problem.FactCount)
            .Select(fact => problem.WaysOf(fact).ToArray().SelectMany(way => problem.Needs[way]).Distinct().ToArray()).ToArray();
        return Enumerable.Range(0, problem.FactCount).SelectMany(first => From(needs, [first], longest)).Take(Most);
    }

    // The first fact of a circle is its smallest, so each circle is met once.
    private static IEnumerable<List<int>> From(int[][] needs, List<int> path, int longest)
    {
        foreach (var need in needs[path[^1]])
        {
            if (need == path[0])
                yield return path;
            else if (need > path[0] && path.Count < longest && !path.Contains(need))
            {
                foreach (var circle in From(needs, [.. path, need], longest))
                    yield return circle;
            }
        }
    }
}
