namespace Refettle.Access.Derivation.Reduction;

/// <summary>Which facts can wait for each other: the strongly connected components of "fact needs fact".</summary>
/// <remarks>Tarjan, Depth-first search and linear graph algorithms, SIAM J. Comput. 1 (1972), without recursion.</remarks>
internal static class Circles
{
    /// <summary>For each fact the number of its component; components come in the order needs before users.</summary>
    public static int[] Components(DerivationProblem problem, out int count)
    {
        var facts = problem.FactCount;
        var component = new int[facts];
        var low = new int[facts];
        var index = new int[facts];
        Array.Fill(component, -1);
        var next = 1;
        count = 0;
        var path = new Stack<int>();
        var calls = new Stack<(int Fact, int Way, int Need)>();
        for (var root = 0; root < facts; root++)
        {
            if (index[root] != 0)
                continue;
            calls.Push((root, 0, 0));
            while (calls.TryPop(out var call))
            {
                var (fact, way, need) = call;
                if (index[fact] == 0)
                {
                    index[fact] = low[fact] = next++;
                    path.Push(fact);
                }

                if (Descend(fact, way, need))
                    continue;
                if (low[fact] == index[fact])
                    Close(fact, count++);
                if (calls.TryPeek(out var caller))
                    low[caller.Fact] = Math.Min(low[caller.Fact], low[fact]);
            }
        }

        return component;

        bool Descend(int fact, int way, int need)
        {
            var ways = problem.WaysOf(fact);
            for (; way < ways.Length; way++, need = 0)
            {
                var needs = problem.Needs[ways[way]];
                for (; need < needs.Length; need++)
                {
                    var target = needs[need];
                    if (index[target] == 0)
                    {
                        calls.Push((fact, way, need + 1));
                        calls.Push((target, 0, 0));
                        return true;
                    }

                    if (component[target] < 0)
                        low[fact] = Math.Min(low[fact], index[target]);
                }
            }

            return false;
        }

        void Close(int fact, int number)
        {
            int member;
            do
            {
                member = path.Pop();
                component[member] = number;
            }
            while (member != fact);
        }
    }
}
