namespace Refettle.Access.Ordering;

/// <summary>Items to be put in a row at least change: each item may need others before it, and going on to an item costs by the
/// setting one is in.</summary>
/// <typeparam name="TSetting">What one carries from item to item: tool in hand, place, posture, stance …</typeparam>
public sealed record SequencingProblem<TSetting>
    where TSetting : notnull
{
    /// <summary>For each item the items that come before it.</summary>
    public required IReadOnlyList<IReadOnlyCollection<int>> Before { get; init; }

    public required TSetting Start { get; init; }

    /// <summary>The cost of going on to an item, 0 or more, and the setting one is in then; null
    /// when it cannot be done from there.</summary>
    public required Func<TSetting, int, (long Cost, TSetting Next)?> Change { get; init; }

    /// <summary>At most what the remaining items must still cost from a setting; null for nothing known.</summary>
    public Func<TSetting, IReadOnlyList<int>, long>? Estimate { get; init; }

    /// <summary>True when a detour never saves: going from a to c directly costs no more than by way of b. Then items that need no
    /// change are done at once.</summary>
    public bool IsDetourFree { get; init; }
}

/// <summary>The row found.</summary>
/// <param name="Order">All items.</param>
/// <param name="Cost">Sum of the changes.</param>
/// <param name="IsProven">No valid row costs less.</param>
public sealed record Sequence(IReadOnlyList<int> Order, long Cost, bool IsProven);

/// <summary>Beam search over the sets of items done, exact while no layer is wider than the beam.</summary>
/// <remarks>Two rows with the same items done and the same setting are the same from there on; the dearer is dropped
/// (Held, Karp, A dynamic programming approach to sequencing problems, J. SIAM 10 (1962)).</remarks>
public static class Sequencing
{
    /// <param name="problem">The items.</param>
    /// <param name="width">Rows kept in each layer, 1 or more.</param>
    /// <returns>The best row found, or null when no row was found.</returns>
    public static Sequence? Best<TSetting>(SequencingProblem<TSetting> problem, int width = 256)
        where TSetting : notnull
    {
        var count = problem.Before.Count;
        var after = Successors(problem.Before);
        var layers = new Dictionary<(ulong, TSetting), Row<TSetting>>[count + 1];
        for (var layer = 0; layer <= count; layer++)
            layers[layer] = [];
        var start = new Row<TSetting>(problem.Start, [.. problem.Before.Select(before => before.Count)]);
        start.Ahead = problem.Estimate?.Invoke(problem.Start, start.Remaining()) ?? 0;
        layers[0][(0, problem.Start)] = start;
        var isComplete = true;
        for (var layer = 0; layer < count; layer++)
        {
            var rows = layers[layer].Values.OrderBy(row => row.Cost + row.Ahead).ThenBy(row => row.Key).ToList();
            isComplete &= rows.Count <= width;
            foreach (var row in rows.Take(width))
            {
                foreach (var next in Continue(problem, after, row))
                    Keep(layers[layer + 1], next);
            }

            layers[layer] = [];
        }

        var best = layers[count].Values.MinBy(row => row.Cost);
        return best is null ? null : new(best.Items(), best.Cost, isComplete || best.Cost == start.Ahead);
    }

    private static void Keep<TSetting>(Dictionary<(ulong, TSetting), Row<TSetting>> layer, Row<TSetting> row)
        where TSetting : notnull
    {
        var key = (row.Key, row.Setting);
        if (!layer.TryGetValue(key, out var known) || row.Cost < known.Cost)
            layer[key] = row;
    }

    private static IEnumerable<Row<TSetting>> Continue<TSetting>(
        SequencingProblem<TSetting> problem, List<int>[] after, Row<TSetting> row)
        where TSetting : notnull
    {
        var seen = new HashSet<TSetting>();
        var steps = new List<(int Item, long Cost, TSetting Next)>();
        for (var item = 0; item < after.Length; item++)
        {
            if (!row.IsReady(item) || problem.Change(row.Setting, item) is not { } change)
                continue;
            if (problem.IsDetourFree && change.Cost == 0)
                return [Extend(problem, after, row, item, change)];
            if (!problem.IsDetourFree || seen.Add(change.Next))
                steps.Add((item, change.Cost, change.Next));
        }

        return steps.Select(step => Extend(problem, after, row, step.Item, (step.Cost, step.Next)));
    }

    private static Row<TSetting> Extend<TSetting>(
        SequencingProblem<TSetting> problem, List<int>[] after, Row<TSetting> row, int item, (long Cost, TSetting Next) change)
        where TSetting : notnull
    {
        var next = new Row<TSetting>(row, item, change.Cost, change.Next, after[item]);
        next.Ahead = change.Cost == 0 ? row.Ahead : problem.Estimate?.Invoke(change.Next, next.Remaining()) ?? 0;
        return next;
    }

    private static List<int>[] Successors(IReadOnlyList<IReadOnlyCollection<int>> before)
    {
        var after = new List<int>[before.Count];
        for (var item = 0; item < after.Length; item++)
            after[item] = [];
        for (var item = 0; item < after.Length; item++)
        {
            foreach (var earlier in before[item])
                after[earlier].Add(item);
        }

        return after;
    }

    private sealed class Row<TSetting>
    {
        private const int Done = -1;

        private readonly Row<TSetting>? _parent;
        private readonly int _item = -1;
        private readonly int[] _waiting;

        public Row(TSetting start, int[] waiting) => (Setting, _waiting) = (start, waiting);

        public Row(Row<TSetting> parent, int item, long cost, TSetting next, List<int> after)
        {
            (_parent, _item, Cost, Setting) = (parent, item, parent.Cost + cost, next);
            Key = parent.Key ^ Mix((ulong)item + 1);
            _waiting = [.. parent._waiting];
            _waiting[item] = Done;
            foreach (var later in after)
                _waiting[later]--;
        }

        public TSetting Setting { get; }

        public long Cost { get; }

        public long Ahead { get; set; }

        /// <summary>The same for the same set of items done.</summary>
        public ulong Key { get; }

        public bool IsReady(int item) => _waiting[item] == 0;

        public List<int> Remaining() => [.. Enumerable.Range(0, _waiting.Length).Where(item => _waiting[item] != Done)];

        public List<int> Items()
        {
            var items = new List<int>();
            for (var row = this; row._parent is not null; row = row._parent)
                items.Add(row._item);
            items.Reverse();
            return items;
        }

        // SplitMix64, Steele, Lea, Flood, Fast splittable pseudorandom number generators, OOPSLA 2014.
        private static ulong Mix(ulong value)
        {
            value *= 0x9E3779B97F4A7C15;
            value = (value ^ (value >> 30)) * 0xBF58476D1CE4E5B9;
            value = (value ^ (value >> 27)) * 0x94D049BB133111EB;
            return value ^ (value >> 31);
        }
    }
}
