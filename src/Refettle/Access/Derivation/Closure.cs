namespace Refettle.Access.Derivation;

/// <summary>What follows from what: forward closure of the ways, backward closure of the needs. Linear time.</summary>
internal static class Closure
{
    /// <summary>For each fact, whether it can be made true without circular support.</summary>
    /// <param name="without">A fact that stays false, or -1.</param>
    public static bool[] Derivable(DerivationProblem problem, int without = -1)
    {
        var open = new int[problem.WayCount];
        var isTrue = new bool[problem.FactCount];
        var queue = new Stack<int>();
        for (var way = 0; way < problem.WayCount; way++)
        {
            open[way] = problem.Needs[way].Length;
            if (open[way] == 0)
                Reach(problem.FactOf[way]);
        }

        while (queue.TryPop(out var fact))
        {
            foreach (var way in problem.UsersOf(fact))
            {
                if (--open[way] == 0)
                    Reach(problem.FactOf[way]);
            }
        }

        return isTrue;

        void Reach(int fact)
        {
            if (fact == without || isTrue[fact])
                return;
            isTrue[fact] = true;
            queue.Push(fact);
        }
    }

    /// <summary>For each fact, whether a goal can call for it.</summary>
    public static bool[] Relevant(DerivationProblem problem)
    {
        var isRelevant = new bool[problem.FactCount];
        var queue = new Stack<int>();
        foreach (var goal in problem.Goals)
            Mark(goal);
        while (queue.TryPop(out var fact))
        {
            foreach (var way in problem.WaysOf(fact))
            {
                foreach (var need in problem.Needs[way])
                    Mark(need);
            }
        }

        return isRelevant;

        void Mark(int fact)
        {
            if (isRelevant[fact])
                return;
            isRelevant[fact] = true;
            queue.Push(fact);
        }
    }

    /// <summary>The facts that chosen ways use to support the goals, or null when support is missing or circular.</summary>
    /// <returns>The supported facts, each after all that it needs.</returns>
    public static List<int>? Supported(DerivationProblem problem, ReadOnlySpan<int> wayOf)
    {
        var order = new List<int>();
        var mark = new byte[problem.FactCount];
        var stack = new Stack<(int Fact, int NextNeed)>();
        foreach (var goal in problem.Goals)
        {
            stack.Push((goal, 0));
            while (stack.TryPop(out var top))
            {
                var (fact, next) = top;
                if (next == 0)
                {
                    if (mark[fact] == 2)
                        continue;
                    if (mark[fact] == 1 || wayOf[fact] < 0)
                        return null;
                    mark[fact] = 1;
                }

                var needs = problem.Needs[wayOf[fact]];
                while (next < needs.Length && mark[needs[next]] == 2)
                    next++;
                if (next == needs.Length)
                {
                    mark[fact] = 2;
                    order.Add(fact);
                    continue;
                }

                if (mark[needs[next]] == 1)
                    return null;
                stack.Push((fact, next + 1));
                stack.Push((needs[next], 0));
            }
        }

        return order;
    }
}
