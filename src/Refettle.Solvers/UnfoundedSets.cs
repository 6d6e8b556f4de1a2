using Refettle.Access.Derivation;

namespace Refettle.Solvers;

/// <summary>Finds circular support in chosen ways.</summary>
internal static class UnfoundedSets
{
    /// <summary>Disjoint circles of facts that only support each other; empty when all support is founded.</summary>
    public static List<List<int>> Of(DerivationProblem problem, int[] wayOf)
    {
        var state = new int[problem.FactCount];
        var circles = new List<List<int>>();
        for (var start = 0; start < problem.FactCount; start++)
        {
            if (wayOf[start] >= 0 && state[start] == 0)
                Walk(problem, wayOf, state, start, circles);
        }

        return circles;
    }

    /// <summary>Depth-first along chosen needs; an edge back into the path closes a circle. States: 0 new, 1 on the path, 2 done.</summary>
    private static void Walk(DerivationProblem problem, int[] wayOf, int[] state, int start, List<List<int>> circles)
    {
        var path = new List<int>();
        var calls = new Stack<(int Fact, int Need)>();
        calls.Push((start, 0));
        while (calls.TryPop(out var call))
        {
            var (fact, next) = call;
            if (next == 0)
            {
                if (state[fact] != 0)
                    continue;
                state[fact] = 1;
                path.Add(fact);
            }

            var needs = wayOf[fact] < 0 ? [] : problem.Needs[wayOf[fact]];
            while (next < needs.Length && state[needs[next]] == 2)
                next++;
            if (next < needs.Length && state[needs[next]] == 1)
            {
                circles.Add(path[path.IndexOf(needs[next])..]);
                next++;
            }

            if (next < needs.Length)
            {
                calls.Push((fact, next + 1));
                if (state[needs[next]] == 0)
                    calls.Push((needs[next], 0));
                continue;
            }

            state[fact] = 2;
            path.RemoveAt(path.Count - 1);
        }
    }
}
