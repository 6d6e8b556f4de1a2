namespace Refettle.Timeline.Scheduling;

/// <summary>Builds schedules of one project from keys, forwards and backwards.</summary>
internal sealed class Builder
{
    private readonly Network _mirror;
    private readonly SerialGeneration _forwards;
    private readonly SerialGeneration _backwards;
    private readonly Lists _lists;
    private readonly Lists _mirrorLists;
    private readonly int[] _list;
    private readonly int[] _work;
    private readonly long[] _keys;

    public Builder(Network network)
    {
        (Network, _mirror) = (network, network.Mirrored());
        (_forwards, _backwards) = (new(network), new(_mirror));
        (_lists, _mirrorLists) = (new(network), new(_mirror));
        (_list, _work, _keys) = (new int[network.Count], new int[network.Count], new long[network.Count]);
        Floor = network.Release.Min();
        Horizon = Propagation.Horizon(network);
        Earliest = Propagation.Earliest(network, Floor, Horizon);
    }

    public Network Network { get; }

    /// <summary>The earliest starts without resources; null when already lags and deadlines cannot be kept.</summary>
    public int[]? Earliest { get; }

    public int Horizon { get; }

    /// <summary>Nothing starts before.</summary>
    public int Floor { get; }

    /// <summary>Schedules built so far.</summary>
    public long Built { get; private set; }

    /// <summary>How often one build may put an activity back.</summary>
    public int MostPutBack { set => (_forwards.MostPutBack, _backwards.MostPutBack) = (value, value); }

    /// <summary>The activity that was too late for its deadline in the last build forwards; below 0 when there was none.</summary>
    public int Late => _forwards.Late;

    /// <summary>The latest starts without resources of schedules that finish until a time; null when none does.</summary>
    public int[]? Latest(int finish)
    {
        if (Propagation.Earliest(_mirror, -finish, Horizon) is not { } mirrored)
            return null;
        return [.. mirrored.Select((start, i) => -_mirror.Finish(i, start))];
    }

    /// <summary>Starts all as early as can be, those with lesser keys first.</summary>
    public bool Forwards(ReadOnlySpan<long> keys, int[] starts)
    {
        Built++;
        _lists.Fill(keys, _list);
        return _forwards.Build(_list, Floor, starts);
    }

    /// <summary>The same with none starting before its own time.</summary>
    public bool ForwardsFrom(ReadOnlySpan<long> keys, int[] releases, int[] starts)
    {
        Built++;
        _lists.Fill(keys, _list);
        return _forwards.Build(_list, Floor, starts, releases);
    }

    /// <summary>Starts all as late as a finish allows, those with greater keys first.</summary>
    public bool Backwards(ReadOnlySpan<long> keys, int finish, int[] starts)
    {
        Built++;
        for (var i = 0; i < keys.Length; i++)
            _keys[i] = -keys[i];
        _mirrorLists.Fill(_keys, _list);
        if (!_backwards.Build(_list, -finish, _work))
            return false;
        for (var i = 0; i < starts.Length; i++)
            starts[i] = -_mirror.Finish(i, _work[i]);
        return true;
    }

    /// <summary>Delays those with a weight, the last ones first, as far as the others leave them room before the last finish.</summary>
    public int[] Delay(int[] starts, ValueList<int> weights)
    {
        var makespan = Makespan(starts);
        var usage = new StepUsage(_mirror);
        usage.Clear(-makespan);
        int[] mirrored = [.. starts.Select((start, i) => -Network.Finish(i, start))];
        for (var i = 0; i < mirrored.Length; i++)
            usage.Hold(i, mirrored[i], -starts[i]);
        foreach (var i in Enumerable.Range(0, weights.Count).Where(i => weights[i] > 0 && !Network.IsDone[i]).OrderBy(i => mirrored[i]))
        {
            usage.Free(i, mirrored[i], _mirror.Finish(i, mirrored[i]));
            var from = Math.Max(-makespan, _mirror.Release[i]);
            foreach (var arc in _mirror.In[i])
                from = Math.Max(from, _mirror.After(arc, mirrored[arc.From]));
            mirrored[i] = usage.FirstFit(i, from);
            usage.Hold(i, mirrored[i], _mirror.Finish(i, mirrored[i]));
        }

        return [.. mirrored.Select((start, i) => -_mirror.Finish(i, start))];
    }

    public int Makespan(int[] starts)
    {
        var last = 0;
        for (var i = 0; i < starts.Length; i++)
            last = Math.Max(last, Network.Finish(i, starts[i]));
        return last;
    }

    public Schedule ToSchedule(int[] starts) => new([.. starts], starts.Select((start, i) => Network.Finish(i, start)).ToValueList());
}
