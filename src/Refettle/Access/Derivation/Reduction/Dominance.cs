namespace Refettle.Access.Derivation.Reduction;

/// <summary>Drops ways that another way of the same fact can always replace at no higher cost.</summary>
internal static class Dominance
{
    public static Core Drop(Core core)
    {
        var problem = core.Problem;
        var alone = CheapestAlone.Of(problem);
        var keep = new bool[problem.WayCount];
        Array.Fill(keep, true);
        var isChanged = false;
        for (var fact = 0; fact < problem.FactCount; fact++)
        {
            var ways = problem.WaysOf(fact);
            foreach (var way in ways)
            {
                if (ways.Length > 1 && IsDominated(problem, ways, way, alone, keep))
                    keep[way] = !(isChanged = true);
            }
        }

        return isChanged ? core.Keep(keep, way => [.. problem.Needs[way]], problem.Goals) : core;
    }

    // Deriving the fact from scratch by its cheapest way replaces a way that costs as much by itself: all facts of that
    // derivation take its ways, none of which needs the fact, so no circle can arise.
    private static bool IsDominated(DerivationProblem problem, ReadOnlySpan<int> ways, int way, CheapestAlone alone, bool[] keep)
    {
        var fact = problem.FactOf[way];
        if (alone.Way[fact] != way && keep[alone.Way[fact]] && problem.Cost[way] >= alone.Cost[fact])
            return true;
        foreach (var other in ways)
        {
            if (other != way && keep[other] && problem.Cost[other] <= problem.Cost[way]
                && problem.Needs[other].Length <= problem.Needs[way].Length
                && problem.Needs[other].All(need => problem.Needs[way].Contains(need)))
                return true;
        }

        return false;
    }
}
