namespace Refettle.Access.Derivation;

/// <summary>For each fact the cheapest derivation in which nothing is shared: an upper bound, and a good first plan.</summary>
/// <remarks>Knuth, A generalization of Dijkstra's algorithm, Information Processing Letters 6 (1977).</remarks>
internal sealed class CheapestAlone
{
    // What is shared is counted each time it is used: sums can grow beyond any number.
    private const long Beyond = long.MaxValue / 1024;

    private readonly List<int> _order;

    private CheapestAlone(long[] cost, int[] way, List<int> order) => (Cost, Way, _order) = (cost, way, order);

    /// <summary>The cost of each fact alone; <see cref="long.MaxValue"/> when it cannot be derived.</summary>
    public long[] Cost { get; }

    /// <summary>The way that reaches that cost, or -1.</summary>
    public int[] Way { get; }

    /// <summary>Another figure summed along the same derivations.</summary>
    public long[] Sums(DerivationProblem problem, long[] figure)
    {
        var sums = new long[problem.FactCount];
        Array.Fill(sums, long.MaxValue);
        foreach (var fact in _order)
        {
            sums[fact] = figure[Way[fact]];
            foreach (var need in problem.Needs[Way[fact]])
                sums[fact] = Math.Min(Beyond, sums[fact] + sums[need]);
        }

        return sums;
    }

    /// <param name="problem">The problem.</param>
    /// <param name="isPaid">Facts that cost nothing more; null for none. Their needs are still followed.</param>
    public static CheapestAlone Of(DerivationProblem problem, bool[]? isPaid = null)
    {
        var cost = new long[problem.FactCount];
        Array.Fill(cost, long.MaxValue);
        var wayOf = new int[problem.FactCount];
        Array.Fill(wayOf, -1);
        var open = new int[problem.WayCount];
        var sum = new long[problem.WayCount];
        var queue = new PriorityQueue<int, long>();
        var order = new List<int>();
        for (var way = 0; way < problem.WayCount; way++)
        {
            open[way] = problem.Needs[way].Length;
            sum[way] = isPaid?[problem.FactOf[way]] == true ? 0 : problem.Cost[way];
            if (open[way] == 0)
                queue.Enqueue(way, sum[way]);
        }

        while (queue.TryDequeue(out var way, out var reached))
        {
            var fact = problem.FactOf[way];
            if (wayOf[fact] >= 0)
                continue;
            (wayOf[fact], cost[fact]) = (way, reached);
            order.Add(fact);
            foreach (var user in problem.UsersOf(fact))
            {
                sum[user] += isPaid?[fact] == true ? 0 : reached;
                if (--open[user] == 0)
                    queue.Enqueue(user, sum[user]);
            }
        }

        return new(cost, wayOf, order);
    }
}
