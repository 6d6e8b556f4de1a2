namespace Refettle.Timeline.Scheduling;

/// <summary>Times before which no schedule can finish.</summary>
internal static class LowerBounds
{
    /// <summary>The greatest of: the critical path with its lags and windows; for each resource, what has to be done with it between the
    /// earliest time any of it can begin and the shortest time that comes after it.</summary>
    public static int Of(Builder builder)
    {
        if (builder.Earliest is not { } earliest)
            return WorkTime.Never;
        var bound = builder.Makespan(earliest);
        var tails = Tails(builder, bound);
        for (var r = 0; r < builder.Network.Capacity.Length; r++)
            bound = Math.Max(bound, Load(builder.Network, r, earliest, tails));
        return bound;
    }

    /// <summary>The least time from each activity's finish to the last finish; 0 where it depends on when.</summary>
    private static int[] Tails(Builder builder, int bound)
    {
        var network = builder.Network;
        if (network.HasWindows || network.HasDone || Array.Exists(network.Deadline, deadline => deadline < WorkTime.Never)
            || builder.Latest(builder.Horizon) is not { } latest)
            return new int[network.Count];
        return [.. latest.Select((start, i) => Math.Clamp(builder.Horizon - network.Finish(i, start), 0, bound))];
    }

    private static int Load(Network network, int r, int[] earliest, int[] tails)
    {
        var users = Enumerable.Range(0, network.Count).Where(i => !network.IsDone[i] && network.Need(i, r) > 0).ToList();
        if (users.Count == 0 || network.Capacity[r] == 0)
            return 0;
        var bound = users.Min(i => earliest[i]) + Needed(network, r, users) + users.Min(i => tails[i]);
        var paced = users.Where(i => network.TimeOf(i) is not null).ToList();
        if (network.ResourceTime[r] is not { } time || paced.Count == 0)
            return bound;
        return Math.Max(bound, time.End(time.Worked(paced.Min(i => earliest[i])) + Needed(network, r, paced)));
    }

    private static int Needed(Network network, int r, List<int> users)
    {
        var work = users.Sum(i => (long)network.Duration[i] * network.Need(i, r));
        return (int)Math.Min(WorkTime.Never - 1, (work + network.Capacity[r] - 1) / network.Capacity[r]);
    }
}
