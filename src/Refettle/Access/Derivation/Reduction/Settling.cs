namespace Refettle.Access.Derivation.Reduction;

/// <summary>Settles what every solution shares: a goal with one way needs what that way needs, and needs
/// that are true anyway are dropped.</summary>
/// <remarks>A need on a goal may be forgotten only when the goal cannot wait for the needing fact in turn; inside a circle it stays,
/// so that circular support is still seen.</remarks>
internal static class Settling
{
    public static Core Apply(Core core)
    {
        var problem = core.Problem;
        var isGoal = Goals(problem);
        var free = new bool[problem.FactCount];
        var settled = new List<int>(core.Settled);
        var needs = NeedsInCircles(problem, isGoal);
        var users = new Queue<int>(Enumerable.Range(0, problem.WayCount).Where(way => needs[way].Count == 0));
        while (users.TryDequeue(out var way))
        {
            var fact = problem.FactOf[way];
            if (free[fact] || !IsFree(problem, isGoal, way))
                continue;
            free[fact] = true;
            settled.AddRange(core.Stands[way]);
            foreach (var user in problem.UsersOf(fact))
            {
                if (needs[user].Remove(fact) && needs[user].Count == 0)
                    users.Enqueue(user);
            }
        }

        var keep = new bool[problem.WayCount];
        for (var way = 0; way < keep.Length; way++)
            keep[way] = !free[problem.FactOf[way]];
        var goals = Enumerable.Range(0, problem.FactCount).Where(fact => isGoal[fact] && !free[fact]);
        return core.Keep(keep, way => [.. needs[way]], goals) with { Settled = settled };
    }

    /// <summary>A way without needs settles its fact when it costs nothing, or when it is a goal's only way.</summary>
    private static bool IsFree(DerivationProblem problem, bool[] isGoal, int way)
    {
        var fact = problem.FactOf[way];
        return problem.Cost[way] == 0 || (isGoal[fact] && problem.WaysOf(fact).Length == 1);
    }

    private static bool[] Goals(DerivationProblem problem)
    {
        var isGoal = new bool[problem.FactCount];
        var queue = new Stack<int>(problem.Goals);
        while (queue.TryPop(out var fact))
        {
            if (isGoal[fact])
                continue;
            isGoal[fact] = true;
            var ways = problem.WaysOf(fact);
            if (ways.Length != 1)
                continue;
            foreach (var need in problem.Needs[ways[0]])
                queue.Push(need);
        }

        return isGoal;
    }

    private static List<int>[] NeedsInCircles(DerivationProblem problem, bool[] isGoal)
    {
        var component = Circles.Components(problem, out _);
        var needs = new List<int>[problem.WayCount];
        for (var way = 0; way < needs.Length; way++)
        {
            var own = component[problem.FactOf[way]];
            needs[way] = [.. problem.Needs[way].Where(need => !isGoal[need] || component[need] == own)];
        }

        return needs;
    }
}
