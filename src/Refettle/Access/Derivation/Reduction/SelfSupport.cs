namespace Refettle.Access.Derivation.Reduction;

/// <summary>Drops ways that need, at bottom, the very fact they would make true.</summary>
internal static class SelfSupport
{
    // Facts looked at before giving up: circles that stay are cut by the solver.
    private const long MostWork = 5_000_000;

    public static Core Drop(Core core)
    {
        var problem = core.Problem;
        var component = Circles.Components(problem, out var count);
        if (count == problem.FactCount)
            return core;
        var size = new int[count];
        foreach (var number in component)
            size[number]++;
        var reliance = new Reliance(problem, CheapestAlone.Of(problem));
        var keep = new bool[problem.WayCount];
        Array.Fill(keep, true);
        var isChanged = false;
        for (var fact = 0; fact < problem.FactCount && reliance.Work < MostWork; fact++)
        {
            if (size[component[fact]] > 1 && problem.WaysOf(fact).Length > 1)
                isChanged |= DropFor(problem, reliance, fact, keep);
        }

        return isChanged ? core.Keep(keep, way => [.. problem.Needs[way]], problem.Goals) : core;
    }

    private static bool DropFor(DerivationProblem problem, Reliance reliance, int fact, bool[] keep)
    {
        reliance.Without(fact);
        var isChanged = false;
        foreach (var way in problem.WaysOf(fact))
        {
            if (problem.Needs[way].Any(reliance.IsLost))
                keep[way] = !(isChanged = true);
        }

        return isChanged;
    }
}
