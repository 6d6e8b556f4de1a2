namespace Refettle.Access.Derivation.Reduction;

/// <summary>Drops ways that need, at bottom, the very fact they would make true.</summary>
internal static class SelfSupport
{
    // Each fact of a circle costs one pass over that circle; larger circles are left to the solver's cuts.
    private const long MostWork = 4_000_000;

    public static Core Drop(Core core)
    {
        var problem = core.Problem;
        var component = Circles.Components(problem, out var count);
        var members = new List<int>[count];
        for (var fact = 0; fact < problem.FactCount; fact++)
            (members[component[fact]] ??= []).Add(fact);
        var keep = new bool[problem.WayCount];
        Array.Fill(keep, true);
        var isChanged = false;
        foreach (var circle in members)
        {
            if (circle.Count > 1 && (long)circle.Count * circle.Sum(fact => problem.UsersOf(fact).Length + 1) <= MostWork)
                isChanged |= DropIn(problem, component, circle, keep);
        }

        return isChanged ? core.Keep(keep, way => [.. problem.Needs[way]], problem.Goals) : core;
    }

    private static bool DropIn(DerivationProblem problem, int[] component, List<int> circle, bool[] keep)
    {
        var own = component[circle[0]];
        var open = new Dictionary<int, int>();
        var isChanged = false;
        foreach (var without in circle)
        {
            var derivable = Derive(without);
            foreach (var way in problem.WaysOf(without))
            {
                if (keep[way] && problem.Needs[way].Any(need => component[need] == own && !derivable.Contains(need)))
                {
                    keep[way] = false;
                    isChanged = true;
                }
            }
        }

        return isChanged;

        HashSet<int> Derive(int without)
        {
            var derivable = new HashSet<int>();
            var queue = new Stack<int>();
            open.Clear();
            foreach (var fact in circle)
            {
                foreach (var way in problem.WaysOf(fact))
                {
                    open[way] = keep[way] ? problem.Needs[way].Count(need => component[need] == own) : int.MaxValue;
                    if (open[way] == 0 && fact != without && derivable.Add(fact))
                        queue.Push(fact);
                }
            }

            while (queue.TryPop(out var fact))
            {
                foreach (var way in problem.UsersOf(fact))
                {
                    var user = problem.FactOf[way];
                    if (component[user] == own && --open[way] == 0 && user != without && derivable.Add(user))
                        queue.Push(user);
                }
            }

            return derivable;
        }
    }
}
