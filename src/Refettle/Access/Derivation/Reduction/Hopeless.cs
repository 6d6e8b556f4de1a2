namespace Refettle.Access.Derivation.Reduction;

/// <summary>Drops ways that can never be used and facts that no goal can call for.</summary>
internal static class Hopeless
{
    /// <returns>The rest, or null when a goal cannot be made true at all.</returns>
    public static Core? Drop(Core core)
    {
        var problem = core.Problem;
        var derivable = Closure.Derivable(problem);
        foreach (var goal in problem.Goals)
        {
            if (!derivable[goal])
                return null;
        }

        var usable = new bool[problem.WayCount];
        for (var way = 0; way < usable.Length; way++)
            usable[way] = problem.Needs[way].All(need => derivable[need]);
        return DropIrrelevant(core.Keep(usable, way => [.. problem.Needs[way]], problem.Goals));
    }

    /// <summary>Drops the ways of facts that no goal can call for.</summary>
    public static Core DropIrrelevant(Core core)
    {
        var problem = core.Problem;
        var relevant = Closure.Relevant(problem);
        if (Array.TrueForAll(relevant, isRelevant => isRelevant))
            return core;
        var keep = new bool[problem.WayCount];
        for (var way = 0; way < keep.Length; way++)
            keep[way] = relevant[problem.FactOf[way]];
        return core.Keep(keep, way => [.. problem.Needs[way]], problem.Goals);
    }
}
