namespace Refettle.Timeline.Scheduling;

/// <summary>Which activities are bound to each other by lags with an upper end, and in which order
/// activities can be placed one by one.</summary>
internal sealed class Cycles
{
    private readonly int[] _cycle;

    public Cycles(Network network)
    {
        _cycle = CyclesOf(network);
        Any = Array.Exists(_cycle, cycle => cycle >= 0);
        (Order, Predecessors) = (new int[network.Count], new int[network.Count]);
        Successors = Place(network);
        foreach (var after in Successors.SelectMany(after => after))
            Predecessors[after]++;
    }

    /// <summary>Whether anything is bound from above by another activity.</summary>
    public bool Any { get; }

    /// <summary>One order in which all can be placed.</summary>
    public int[] Order { get; }

    /// <summary>For each activity those that are placed after it in every order.</summary>
    public int[][] Successors { get; }

    /// <summary>For each activity how many are placed before it in every order.</summary>
    public int[] Predecessors { get; }

    /// <summary>The cycle an activity is part of; below 0 when of none.</summary>
    public int Of(int activity) => _cycle[activity];

    public bool Share(int one, int other) => _cycle[one] >= 0 && _cycle[one] == _cycle[other];

    /// <summary>Takes, again and again, an activity with nothing left before it. Inside a cycle only lags of 0 or more count, and where
    /// these go in a circle too it is cut, but only where nothing outside the cycle is left before it: what is placed before it without
    /// an upper end towards it would never be put back.</summary>
    private int[][] Place(Network network)
    {
        var (counts, outside) = (new int[network.Count], new int[network.Count]);
        var binding = network.Arcs.Where(arc => arc.From != arc.To && (!Share(arc.From, arc.To) || arc.StartToStart(network.Duration) >= 0))
            .ToList();
        foreach (var arc in binding)
        {
            counts[arc.To]++;
            outside[arc.To] += Share(arc.From, arc.To) ? 0 : 1;
        }

        var after = binding.ToLookup(arc => arc.From, arc => arc.To);
        var place = new int[network.Count];
        Array.Fill(place, -1);
        var ready = new Queue<int>(Enumerable.Range(0, network.Count).Where(i => counts[i] == 0));
        for (var placed = 0; placed < network.Count; placed++)
        {
            if (ready.Count == 0)
                ready.Enqueue(Enumerable.Range(0, network.Count).Where(i => place[i] < 0 && outside[i] == 0).MinBy(i => counts[i]));
            var next = ready.Dequeue();
            place[next] = placed;
            Order[placed] = next;
            foreach (var to in after[next])
            {
                outside[to] -= Share(next, to) ? 0 : 1;
                if (--counts[to] == 0 && place[to] < 0)
                    ready.Enqueue(to);
            }
        }

        return [.. Enumerable.Range(0, network.Count).Select(i => after[i].Where(to => place[to] > place[i]).Distinct().ToArray())];
    }

    /// <summary>The strongly connected components of more than one activity, after Tarjan (1972), without recursion.</summary>
    private static int[] CyclesOf(Network network)
    {
        var (cycle, index, low) = (new int[network.Count], new int[network.Count], new int[network.Count]);
        var (isOpen, open, path) = (new bool[network.Count], new Stack<int>(), new Stack<(int Node, int Next)>());
        Array.Fill(cycle, -1);
        var (visited, cycles) = (0, 0);
        for (var root = 0; root < network.Count; root++)
        {
            if (index[root] == 0)
                path.Push((root, 0));
            while (path.TryPop(out var at))
            {
                var (node, next) = at;
                if (next == 0)
                {
                    index[node] = low[node] = ++visited;
                    open.Push(node);
                    isOpen[node] = true;
                }
                else if (isOpen[network.Out[node][next - 1].To])
                {
                    low[node] = Math.Min(low[node], low[network.Out[node][next - 1].To]);
                }

                while (next < network.Out[node].Length && index[network.Out[node][next].To] != 0)
                {
                    if (isOpen[network.Out[node][next].To])
                        low[node] = Math.Min(low[node], index[network.Out[node][next].To]);
                    next++;
                }

                if (next < network.Out[node].Length)
                {
                    path.Push((node, next + 1));
                    path.Push((network.Out[node][next].To, 0));
                }
                else if (low[node] == index[node])
                {
                    Close(node, open, isOpen, cycle, ref cycles);
                }
            }
        }

        return cycle;
    }

    private static void Close(int node, Stack<int> open, bool[] isOpen, int[] cycle, ref int cycles)
    {
        var isAlone = open.Peek() == node;
        int member;
        do
        {
            member = open.Pop();
            isOpen[member] = false;
            cycle[member] = isAlone ? -1 : cycles;
        }
        while (member != node);
        if (!isAlone)
            cycles++;
    }
}
