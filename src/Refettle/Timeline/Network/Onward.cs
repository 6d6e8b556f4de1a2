namespace Refettle.Timeline.Network;

/// <summary>What can be got to by going on from task to task.</summary>
internal static class Onward
{
    /// <summary>All that is got to; the task itself only where a circle leads back to it.</summary>
    /// <param name="next">Where one can go from a task.</param>
    public static HashSet<T> From<T>(T task, Func<T, IEnumerable<T>> next)
    {
        var seen = new HashSet<T>();
        var open = new Stack<T>([task]);
        while (open.TryPop(out var one))
        {
            foreach (var other in next(one).Where(seen.Add))
                open.Push(other);
        }

        return seen;
    }
}
