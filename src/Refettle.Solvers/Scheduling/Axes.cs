using Refettle.Timeline.Scheduling;

namespace Refettle.Solvers.Scheduling;

/// <summary>Which working time each activity and each resource is best looked at in; null is the clock.</summary>
internal sealed class Axes
{
    private readonly Dictionary<string, Axis> _known = [];

    public Axes(Network network)
    {
        OfResource = new Axis?[network.Capacity.Length];
        OfActivity = new Axis?[network.Count];
        var users = network.Capacity
            .Select((_, r) => Enumerable.Range(0, network.Count).Where(i => !network.IsDone[i] && network.Need(i, r) > 0).ToList())
            .ToList();
        var busiest = Enumerable.Range(0, users.Count).Where(r => network.ResourceTime[r] is not null)
            .OrderByDescending(r => users[r].Count).ToList();
        for (var i = 0; i < network.Count; i++)
        {
            if (network.TimeOf(i) is not { } time)
                continue;

            // What stays inside one window has its length on the axis of every resource it needs; what pauses, only on its own.
            var main = network.IsUnbroken(i) ? busiest.First(r => network.Need(i, r) > 0) : -1;
            OfActivity[i] = Known(main >= 0 ? network.ResourceTime[main]! : time);
        }

        for (var r = 0; r < users.Count; r++)
            OfResource[r] = OfUsers(network.ResourceTime[r], users[r], network);
    }

    public Axis?[] OfActivity { get; }

    public Axis?[] OfResource { get; }

    /// <summary>The axis that most of those who hold a resource are on, where none of them holds it by the clock.</summary>
    private Axis? OfUsers(WorkTime? open, List<int> users, Network network)
    {
        if (users.Count == 0 || users.Exists(i => network.TimeOf(i) is null))
            return null;
        if (open is not null)
            return Known(open);
        var axes = users.Select(i => OfActivity[i]).Distinct().ToList();
        return axes.Count == 1 ? axes[0] : null;
    }

    private Axis Known(WorkTime time)
    {
        var key = string.Join(' ', Enumerable.Range(0, time.Count).Select(k => $"{time[k].Start}-{time[k].End}"));
        return _known.TryGetValue(key, out var axis) ? axis : _known[key] = new(time);
    }
}
