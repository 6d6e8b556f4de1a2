namespace Refettle.Timeline.Network;

/// <summary>Tasks and links while they are put together.</summary>
internal sealed class NetworkDraft
{
    private readonly Dictionary<string, WorkTask> _tasks = [];
    private readonly List<string> _order = [];
    private readonly Dictionary<(string Before, string After), TaskLink> _links = [];
    private readonly Dictionary<string, List<string>> _after = [];
    private readonly Dictionary<string, List<string>> _before = [];

    public List<Fault> Notes { get; } = [];

    public IEnumerable<WorkTask> Tasks => _order.Select(id => _tasks[id]);

    public IEnumerable<TaskLink> Links => _links.Values;

    public WorkTask this[string id] => _tasks[id];

    public bool Has(string id) => _tasks.ContainsKey(id);

    /// <summary>Adds a task; where its name is taken already it gets a number.</summary>
    /// <returns>Its name.</returns>
    public string Add(WorkTask task)
    {
        var id = Numbered(task.Id).First(id => !Has(id));
        _tasks.Add(id, task with { Id = id });
        _order.Add(id);
        return id;
    }

    /// <summary>The tasks that were to have this name.</summary>
    public IEnumerable<string> Named(string name) => Numbered(name).TakeWhile(Has);

    private static IEnumerable<string> Numbered(string name) =>
        Enumerable.Range(1, int.MaxValue).Select(number => number == 1 ? name : $"{name}-{number}");

    public void Change(string id, Func<WorkTask, WorkTask> change) => _tasks[id] = change(_tasks[id]);

    /// <summary>The second waits for the first; of two such links the tighter ends count.</summary>
    public void Link(string before, string after, int least = 0, int? most = null, string why = "")
    {
        if (before == after)
            return;
        if (_links.TryGetValue((before, after), out var link))
        {
            var end = most is { } one && link.Most is { } other ? Math.Min(one, other) : most ?? link.Most;
            _links[(before, after)] = link with
            { Least = Math.Max(least, link.Least), Most = end, Why = link.Why.Length > 0 ? link.Why : why };
            return;
        }

        _links.Add((before, after), new(before, after, least, most, why));
        Beside(_after, before).Add(after);
        Beside(_before, after).Add(before);
    }

    /// <summary>Links unless the first already waits for the second.</summary>
    public bool TryLink(string before, string after, string why = "")
    {
        if (before == after || Reaches(after, before))
            return false;
        Link(before, after, why: why);
        return true;
    }

    public void Unlink(string before, string after)
    {
        if (!_links.Remove((before, after)))
            return;
        _after[before].Remove(after);
        _before[after].Remove(before);
    }

    /// <summary>Whether the second waits for the first, by whatever lies between.</summary>
    public bool Reaches(string from, string to) => from == to || Onward.From(from, DirectlyAfter).Contains(to);

    /// <summary>All that must be finished before a task starts.</summary>
    public HashSet<string> Before(string id) => Onward.From(id, DirectlyBefore);

    public IReadOnlyList<string> DirectlyBefore(string id) => _before.TryGetValue(id, out var some) ? some : [];

    public IReadOnlyList<string> DirectlyAfter(string id) => _after.TryGetValue(id, out var some) ? some : [];

    /// <summary>The tasks in an order in which each comes after those it waits for, as they were added otherwise.</summary>
    public TaskNetwork Build()
    {
        var place = _order.Select((id, i) => (id, i)).ToDictionary(pair => pair.id, pair => pair.i);
        var open = _order.ToDictionary(id => id, id => DirectlyBefore(id).Count);
        var ready = new SortedSet<int>(_order.Where(id => open[id] == 0).Select(id => place[id]));
        var ordered = new List<WorkTask>();
        while (ready.Count > 0)
        {
            var id = _order[ready.Min];
            ready.Remove(ready.Min);
            ordered.Add(_tasks[id]);
            foreach (var next in DirectlyAfter(id).Where(next => --open[next] == 0))
                ready.Add(place[next]);
        }

        return ordered.Count == _order.Count
            ? new(ordered.ToValueList(), _links.Values.ToValueList(), Notes.Distinct().ToValueList())
            : throw new InvalidOperationException(
                $"Tasks wait for each other: {string.Join(", ", _order.Except(ordered.Select(task => task.Id)))}.");
    }

    private static List<string> Beside(Dictionary<string, List<string>> lists, string id) =>
        lists.TryGetValue(id, out var list) ? list : lists[id] = [];
}
