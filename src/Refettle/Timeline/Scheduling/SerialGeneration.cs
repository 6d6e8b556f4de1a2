namespace Refettle.Timeline.Scheduling;

/// <summary>Serial schedule generation: takes activities one by one from a list and starts each as early as lags, windows and resources
/// allow. Where one comes too late for a lag's upper end, the activity that set that end is put back and all is built anew
/// (an unscheduling step, after Franck, Neumann and Schwindt, OR Spektrum 23, 2001).</summary>
internal sealed class SerialGeneration
{
    private readonly Network _network;
    private readonly Usage _usage;
    private readonly int _horizon;
    private readonly int[] _release;
    private readonly int[] _earliest;
    private readonly int[] _latest;
    private readonly int[] _culprit;
    private readonly bool[] _isPlaced;
    private readonly Queue<int> _changed = new();

    public SerialGeneration(Network network)
    {
        (_network, _usage, _horizon) = (network, Usage.For(network), Propagation.Horizon(network));
        (_release, _earliest, _latest) = (new int[network.Count], new int[network.Count], new int[network.Count]);
        (_culprit, _isPlaced) = (new int[network.Count], new bool[network.Count]);
    }

    /// <summary>How often it may put back and begin anew.</summary>
    public int MostRestarts { get; set; } = 200;

    /// <summary>The activity that came too late for its own deadline, when the last build failed for that; else below 0.</summary>
    public int Late { get; private set; } = -1;

    /// <summary>Builds a schedule.</summary>
    /// <param name="list">All activities, none before one that <see cref="Cycles.Successors"/> puts before it.</param>
    /// <param name="floor">None starts before.</param>
    /// <param name="starts">Filled with the starts.</param>
    /// <param name="releases">None starts before its own.</param>
    /// <returns>Whether it is a schedule that keeps everything.</returns>
    public bool Build(ReadOnlySpan<int> list, int floor, int[] starts, int[]? releases = null)
    {
        for (var i = 0; i < _release.Length; i++)
            _release[i] = releases is null ? _network.Release[i] : Math.Max(releases[i], _network.Release[i]);
        for (var restart = 0; restart <= MostRestarts; restart++)
        {
            if (!Prepare(floor))
                return false;
            var failed = PlaceAll(list, starts, out var by);
            if (failed < 0)
                return true;
            if (!PutBack(failed, by, starts))
                return false;
        }

        return false;
    }

    private bool Prepare(int floor)
    {
        _usage.Clear(floor);
        Array.Clear(_isPlaced);
        for (var i = 0; i < _latest.Length; i++)
            (_latest[i], _culprit[i]) = (_network.Deadline[i] >= WorkTime.Never ? WorkTime.Never : _network.LastStart(i, _network.Deadline[i]), -1);
        if (!_network.Cycles.Any)
        {
            for (var i = 0; i < _earliest.Length; i++)
                _earliest[i] = Math.Max(floor, _release[i]);
            return true;
        }

        if (Propagation.Earliest(_network, floor, _horizon, _release) is not { } earliest)
            return false;
        Array.Copy(earliest, _earliest, earliest.Length);
        return true;
    }

    /// <summary>The activity that could not be placed, and by how much it came too late; below 0 when all are placed.</summary>
    private int PlaceAll(ReadOnlySpan<int> list, int[] starts, out int by)
    {
        by = 0;
        if (_network.HasDone)
            PlaceDone(starts);
        foreach (var i in list)
        {
            if (_isPlaced[i])
                continue;
            var start = _usage.FirstFit(i, _earliest[i]);
            if (start > _latest[i] || start >= WorkTime.Never)
            {
                by = start - _latest[i];
                return i;
            }

            var failed = Place(i, start, starts);
            if (failed >= 0)
            {
                by = _earliest[failed] - _latest[failed];
                return failed;
            }
        }

        return -1;
    }

    private void PlaceDone(int[] starts)
    {
        for (var i = 0; i < starts.Length; i++)
        {
            if (_network.IsDone[i])
                Place(i, _network.DoneFrom[i], starts);
        }
    }

    private int Place(int i, int start, int[] starts)
    {
        starts[i] = start;
        _isPlaced[i] = true;
        _usage.Hold(i, start, _network.Finish(i, start));
        foreach (ref readonly var arc in _network.Out[i].AsSpan())
            Raise(arc, start);
        if (!_network.Cycles.Any || _network.Cycles.Of(i) < 0)
            return -1;
        foreach (ref readonly var arc in _network.In[i].AsSpan())
            Lower(arc, start, i);
        return Spread();
    }

    private void Raise(in Arc arc, int start)
    {
        if (_isPlaced[arc.To])
            return;
        var after = _network.After(arc, start);
        if (after <= _earliest[arc.To])
            return;
        _earliest[arc.To] = after;
        if (_network.Cycles.Of(arc.To) >= 0)
            _changed.Enqueue(arc.To);
    }

    private void Lower(in Arc arc, int start, int culprit)
    {
        if (_isPlaced[arc.From] || !_network.Cycles.Share(arc.From, arc.To))
            return;
        var before = _network.Before(arc, start);
        if (before >= _latest[arc.From])
            return;
        (_latest[arc.From], _culprit[arc.From]) = (before, culprit);
        _changed.Enqueue(arc.From);
    }

    /// <summary>Carries changed bounds along cycles.</summary>
    /// <returns>An activity whose bounds have crossed; below 0 when there is none.</returns>
    private int Spread()
    {
        while (_changed.TryDequeue(out var i))
        {
            if (_earliest[i] > _latest[i])
            {
                _changed.Clear();
                return i;
            }

            foreach (ref readonly var arc in _network.Out[i].AsSpan())
            {
                if (_network.Cycles.Share(arc.From, arc.To))
                    Raise(arc, _earliest[i]);
            }

            if (_latest[i] >= WorkTime.Never)
                continue;
            foreach (ref readonly var arc in _network.In[i].AsSpan())
                Lower(arc, _latest[i], _culprit[i]);
        }

        return -1;
    }

    private bool PutBack(int failed, int by, int[] starts)
    {
        var culprit = _culprit[failed];
        Late = culprit < 0 ? failed : -1;
        if (culprit < 0 || _network.IsDone[culprit] || by <= 0 || by >= WorkTime.Never / 2)
            return false;
        _release[culprit] = _network.Start(culprit, starts[culprit] + by);
        return _release[culprit] < _horizon;
    }
}
