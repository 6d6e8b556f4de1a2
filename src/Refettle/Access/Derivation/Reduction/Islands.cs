namespace Refettle.Access.Derivation.Reduction;

/// <summary>Splits a core into parts that share no fact: each is solved alone.</summary>
internal static class Islands
{
    public static List<Core> Split(Core core)
    {
        var problem = core.Problem;
        var root = Enumerable.Range(0, problem.FactCount).ToArray();
        for (var way = 0; way < problem.WayCount; way++)
        {
            foreach (var need in problem.Needs[way])
                root[Find(need)] = Find(problem.FactOf[way]);
        }

        var waysByRoot = Enumerable.Range(0, problem.WayCount).ToLookup(way => Find(problem.FactOf[way]));
        var goalsByRoot = problem.Goals.ToLookup(Find);
        if (goalsByRoot.Count == 1)
            return [core with { Settled = [] }];
        return [.. goalsByRoot.Select(goals => Part(core, waysByRoot[goals.Key], goals))];

        int Find(int fact)
        {
            while (root[fact] != fact)
                fact = root[fact] = root[root[fact]];
            return fact;
        }
    }

    private static Core Part(Core core, IEnumerable<int> ways, IEnumerable<int> goals)
    {
        var problem = core.Problem;
        var numbers = new Dictionary<int, int>();
        var own = ways.ToArray();
        var factOf = Array.ConvertAll(own, way => Number(problem.FactOf[way]));
        var needs = Array.ConvertAll(own, way => problem.Needs[way].Select(Number).ToArray());
        var cost = Array.ConvertAll(own, way => problem.Cost[way]);
        var newGoals = goals.Select(Number).ToArray();
        return new(new(numbers.Count, factOf, needs, cost, newGoals), Array.ConvertAll(own, way => core.Stands[way]), []);

        int Number(int fact)
        {
            if (!numbers.TryGetValue(fact, out var number))
                numbers.Add(fact, number = numbers.Count);
            return number;
        }
    }
}
