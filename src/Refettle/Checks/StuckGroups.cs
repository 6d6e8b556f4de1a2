namespace Refettle.Checks;

/// <summary>Groups of facts that wait for each other and for nothing else.</summary>
internal static class StuckGroups
{
    private const int MostStarts = 64;

    /// <summary>The strongly connected components without a way out (Tarjan, 1972, without recursion), each in order of names.</summary>
    public static List<int[]> Of(SupportGraph graph, int[] stuck)
    {
        var search = new Search(graph);
        foreach (var fact in stuck)
            search.From(fact);
        return search.Groups;
    }

    /// <summary>A shortest circle in a group, beginning with its first name; in a large group the shortest
    /// through one of its first facts.</summary>
    public static List<int> SmallestCircle(SupportGraph graph, int[] group)
    {
        List<int>? best = null;
        foreach (var start in group.Take(MostStarts))
        {
            var circle = Through(graph, start);
            if (best is null || circle.Count < best.Count)
                best = circle;
        }

        return best!;
    }

    /// <summary>Breadth first from a fact back to itself. Every fact of a closed group lies on a circle.</summary>
    private static List<int> Through(SupportGraph graph, int start)
    {
        var from = new Dictionary<int, int>();
        var queue = new Queue<int>([start]);
        while (queue.TryDequeue(out var fact))
        {
            foreach (var next in graph.WaitsFor(fact))
            {
                if (next == start)
                    return Back(from, start, fact);
                if (from.TryAdd(next, fact))
                    queue.Enqueue(next);
            }
        }

        throw new InvalidOperationException("A fact that waits for nothing cannot be stuck.");
    }

    private static List<int> Back(Dictionary<int, int> from, int start, int last)
    {
        var circle = new List<int>();
        for (var fact = last; fact != start; fact = from[fact])
            circle.Add(fact);
        circle.Add(start);
        circle.Reverse();
        return circle;
    }

    private sealed class Search(SupportGraph graph)
    {
        private readonly Dictionary<int, int> _index = [];
        private readonly Dictionary<int, int> _low = [];
        private readonly HashSet<int> _closed = [];
        private readonly Stack<int> _open = new();
        private readonly Stack<(int Fact, IEnumerator<int> Next)> _path = new();

        public List<int[]> Groups { get; } = [];

        public void From(int start)
        {
            if (!_index.ContainsKey(start))
                Enter(start);
            while (_path.TryPeek(out var top))
            {
                if (!top.Next.MoveNext())
                    Leave(_path.Pop().Fact);
                else if (!_index.TryGetValue(top.Next.Current, out var seen))
                    Enter(top.Next.Current);
                else if (!_closed.Contains(top.Next.Current))
                    _low[top.Fact] = Math.Min(_low[top.Fact], seen);
            }
        }

        private void Enter(int fact)
        {
            _index[fact] = _low[fact] = _index.Count;
            _open.Push(fact);
            _path.Push((fact, graph.WaitsFor(fact).GetEnumerator()));
        }

        private void Leave(int fact)
        {
            if (_low[fact] == _index[fact])
                Close(fact);
            if (_path.TryPeek(out var above))
                _low[above.Fact] = Math.Min(_low[above.Fact], _low[fact]);
        }

        private void Close(int root)
        {
            var group = new HashSet<int>();
            do
                group.Add(_open.Peek());
            while (_open.Pop() != root);
            _closed.UnionWith(group);
            if (group.All(fact => graph.WaitsFor(fact).All(group.Contains)))
                Groups.Add([.. group.OrderBy(fact => graph[fact])]);
        }
    }
}
