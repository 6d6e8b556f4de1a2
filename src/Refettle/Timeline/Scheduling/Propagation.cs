namespace Refettle.Timeline.Scheduling;

/// <summary>The earliest starts that releases, windows and lags allow, whatever the resources say.</summary>
internal static class Propagation
{
    /// <summary>A time that no schedule worth having passes: all that there is, one after the other.</summary>
    public static int Horizon(Network network)
    {
        var last = 0L;
        var sum = network.Arcs.Sum(arc => (long)Math.Max(0, arc.Lag));
        for (var i = 0; i < network.Count; i++)
        {
            last = Math.Max(last, network.IsDone[i] ? network.DoneTo[i] : network.Release[i]);
            if (network.TimeOf(i) is { Count: > 0 } time)
                last = Math.Max(last, time[time.Count - 1].End);
            sum += network.Duration[i];
        }

        return (int)Math.Min(last + sum, WorkTime.Never - 1);
    }

    /// <summary>The earliest starts.</summary>
    /// <param name="floor">None starts before.</param>
    /// <param name="horizon">Starts after it are taken as a sign that lags chase each other in a circle.</param>
    /// <returns>Null when no starts keep all the lags and deadlines.</returns>
    public static int[]? Earliest(Network network, int floor, int horizon, int[]? releases = null)
    {
        var earliest = new int[network.Count];
        var isWaiting = new bool[network.Count];
        var waiting = new Queue<int>(network.Count);
        for (var i = 0; i < network.Count; i++)
            earliest[i] = network.IsDone[i] ? network.DoneFrom[i] : network.Start(i, Math.Max(floor, (releases ?? network.Release)[i]));
        foreach (var i in network.Cycles.Order)
        {
            waiting.Enqueue(i);
            isWaiting[i] = true;
        }

        while (waiting.TryDequeue(out var i))
        {
            isWaiting[i] = false;
            if (!network.IsDone[i] && (earliest[i] > horizon || network.Finish(i, earliest[i]) > network.Deadline[i]))
                return null;
            foreach (var arc in network.Out[i])
            {
                var after = network.After(arc, earliest[i]);
                if (after <= earliest[arc.To])
                    continue;
                if (network.IsDone[arc.To])
                    return null;
                earliest[arc.To] = after;
                if (!isWaiting[arc.To])
                    waiting.Enqueue(arc.To);
                isWaiting[arc.To] = true;
            }
        }

        return earliest;
    }
}
