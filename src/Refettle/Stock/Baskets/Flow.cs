namespace Refettle.Stock.Baskets;

/// <summary>Pieces flowing from supplies to needs at least cost; needs are served one after the other.</summary>
/// <param name="left">Pieces of each supply.</param>
internal sealed class Flow(int needs, int[] left)
{
    private readonly List<(int Supply, int Cost)>[] _open = [.. Enumerable.Range(0, needs).Select(_ => new List<(int, int)>())];
    private readonly Dictionary<(int Need, int Supply), int> _given = [];
    private readonly List<(int Need, int Cost)>[] _takers = [.. left.Select(_ => new List<(int, int)>())];

    public void Connect(int need, int supply, int cost)
    {
        _open[need].Add((supply, cost));
        _takers[supply].Add((need, cost));
    }

    public IEnumerable<(int Supply, int Count)> GivenTo(int need) =>
        _open[need].Select(edge => (edge.Supply, _given.GetValueOrDefault((need, edge.Supply)))).Where(pair => pair.Item2 > 0);

    /// <summary>Gives a need as many pieces as can be, shifting others to other pieces where that helps.</summary>
    public void Serve(int need, int count)
    {
        while (count > 0 && Cheapest(need) is { Count: > 0 } path)
        {
            // A path runs need, supply, need, supply …: each need takes from the supply after it and gives back to the one before it.
            var amount = Math.Min(count, left[path[^1]]);
            for (var i = 2; i < path.Count; i += 2)
                amount = Math.Min(amount, _given[(path[i], path[i - 1])]);
            for (var i = 0; i < path.Count; i += 2)
            {
                Add(path[i], path[i + 1], amount);
                if (i > 0)
                    Add(path[i], path[i - 1], -amount);
            }

            left[path[^1]] -= amount;
            count -= amount;
        }
    }

    private void Add(int need, int supply, int amount) => _given[(need, supply)] = _given.GetValueOrDefault((need, supply)) + amount;

    /// <summary>The path of least cost to a supply that has pieces left (Bellman and Ford, with a
    /// queue); empty when there is none.</summary>
    private List<int> Cheapest(int start)
    {
        var far = new Dictionary<int, int>();
        var before = new Dictionary<int, int>();
        var entered = new Dictionary<int, int>();
        var distance = new Dictionary<int, int> { [start] = 0 };
        var queue = new Queue<int>([start]);
        while (queue.TryDequeue(out var need))
        {
            foreach (var (supply, cost) in _open[need])
            {
                var here = distance[need] + cost;
                if (far.TryGetValue(supply, out var known) && known <= here)
                    continue;
                (far[supply], before[supply]) = (here, need);
                foreach (var (other, given) in _takers[supply]
                    .Where(taker => taker.Need != need && _given.GetValueOrDefault((taker.Need, supply)) > 0))
                {
                    if (distance.TryGetValue(other, out var was) && was <= here - given)
                        continue;
                    (distance[other], entered[other]) = (here - given, supply);
                    queue.Enqueue(other);
                }
            }
        }

        var ends = far.Where(supply => left[supply.Key] > 0).ToList();
        return ends.Count == 0 ? [] : Path(start, ends.MinBy(supply => (supply.Value, supply.Key)).Key, before, entered);
    }

    private static List<int> Path(int start, int supply, Dictionary<int, int> before, Dictionary<int, int> entered)
    {
        var path = new List<int>();
        while (true)
        {
            path.InsertRange(0, [before[supply], supply]);
            if (before[supply] == start)
                return path;
            supply = entered[before[supply]];
        }
    }
}
