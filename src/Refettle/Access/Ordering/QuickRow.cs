namespace Refettle.Access.Ordering;

/// <summary>A row for many items in one pass: what needs no change is done at once, else the cheapest change is made, and among equals the
/// one that the most items wait for.</summary>
/// <param name="before">For each item the items that come before it.</param>
/// <param name="wanted">What each item asks for.</param>
/// <param name="change">The cost of going on to an item and the setting after; null when it cannot be done from there.</param>
internal sealed class QuickRow(
    IReadOnlyList<IReadOnlyCollection<int>> before, Setting[] wanted, Func<Setting, int, (long Cost, Setting Next)?> change)
{
    private readonly Dictionary<Setting, Stack<int>> _ready = [];

    /// <returns>All items in order, or null when some can never be done.</returns>
    public List<int>? From(Setting setting)
    {
        var waiting = before.Select(items => items.Count).ToArray();
        var after = Enumerable.Range(0, waiting.Length).SelectMany(item => before[item], (item, earlier) => (item, earlier))
            .ToLookup(pair => pair.earlier, pair => pair.item);
        for (var item = 0; item < waiting.Length; item++)
        {
            if (waiting[item] == 0)
                Ready(item);
        }

        var row = new List<int>(waiting.Length);
        while (Next(setting) is { } next)
        {
            var item = _ready[next.Wanted].Pop();
            if (_ready[next.Wanted].Count == 0)
                _ready.Remove(next.Wanted);
            row.Add(item);
            setting = next.Setting;
            foreach (var later in after[item])
            {
                if (--waiting[later] == 0)
                    Ready(later);
            }
        }

        return row.Count == waiting.Length ? row : null;
    }

    private void Ready(int item)
    {
        if (!_ready.TryGetValue(wanted[item], out var items))
            _ready.Add(wanted[item], items = new());
        items.Push(item);
    }

    private (Setting Wanted, Setting Setting)? Next(Setting from)
    {
        (Setting Wanted, Setting Setting)? best = null;
        var (least, most) = (long.MaxValue, 0);
        foreach (var (asked, items) in _ready)
        {
            if (change(from, items.Peek()) is not { } step || step.Cost > least || (step.Cost == least && items.Count <= most))
                continue;
            (best, least, most) = ((asked, step.Next), step.Cost, items.Count);
            if (least == 0)
                break;
        }

        return best;
    }
}
