namespace Refettle.Timeline.Scheduling;

/// <summary>Serial schedule generation: takes activities one by one from a list and starts each as early as lags, windows and resources
/// allow. Where one comes too late for a lag's upper end, all is taken back to the activity that set that end, which then starts later
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
    private readonly Stack<(int Activity, int Place, int Trail)> _placed = new();
    private readonly Stack<(int Activity, int Earliest, int Latest, int Culprit)> _trail = new();

    private int[]? _known;
    private int _knownFloor;
    private int[] _knownRelease = [];

    public SerialGeneration(Network network)
    {
        (_network, _usage, _horizon) = (network, Usage.For(network), Propagation.Horizon(network));
        (_release, _earliest, _latest) = (new int[network.Count], new int[network.Count], new int[network.Count]);
        (_culprit, _isPlaced) = (new int[network.Count], new bool[network.Count]);
        MostPutBack = 4 * network.Count + 200;
    }

    /// <summary>How often one build may put an activity back.</summary>
    public int MostPutBack { get; set; }

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
        Late = -1;
        return Prepare(floor) && PlaceAll(list, starts);
    }

    private bool Prepare(int floor)
    {
        _usage.Clear(floor);
        _placed.Clear();
        _trail.Clear();
        Array.Clear(_isPlaced);
        for (var i = 0; i < _latest.Length; i++)
            (_latest[i], _culprit[i]) =
                (_network.Deadline[i] >= WorkTime.Never ? WorkTime.Never : _network.LastStart(i, _network.Deadline[i]), -1);
        if (!_network.Cycles.Any)
        {
            for (var i = 0; i < _earliest.Length; i++)
                _earliest[i] = Math.Max(floor, _release[i]);
            return true;
        }

        // What follows from lags alone is the same for every list, as long as floor and releases are.
        if (_known is null || floor != _knownFloor || !_release.AsSpan().SequenceEqual(_knownRelease))
        {
            _known = Propagation.Earliest(_network, floor, _horizon, _release);
            (_knownFloor, _knownRelease) = (floor, [.. _release]);
        }

        _known?.CopyTo(_earliest, 0);
        return _known is not null;
    }

    private bool PlaceAll(ReadOnlySpan<int> list, int[] starts)
    {
        if (_network.HasDone)
            PlaceDone(starts);
        var putBack = 0;
        for (var place = 0; place < list.Length; place++)
        {
            var i = list[place];
            if (_isPlaced[i])
                continue;
            var start = _usage.FirstFit(i, Math.Max(_earliest[i], _release[i]));
            var by = start - _latest[i];
            var failed = by > 0 || start >= WorkTime.Never ? i : Place(i, place, start, starts);
            if (failed < 0)
                continue;
            if (failed != i || by <= 0)
                by = _earliest[failed] - _latest[failed];
            place = ++putBack > MostPutBack ? -1 : PutBack(failed, by, starts);
            if (place < 0)
                return false;
            place--;
        }

        return true;
    }

    private void PlaceDone(int[] starts)
    {
        for (var i = 0; i < starts.Length; i++)
        {
            if (_network.IsDone[i])
                Place(i, -1, _network.DoneFrom[i], starts);
        }
    }

    private int Place(int i, int place, int start, int[] starts)
    {
        if (place >= 0 && _network.Cycles.Any)
            _placed.Push((i, place, _trail.Count));
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
        Remember(arc.To);
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
        Remember(arc.From);
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

    private void Remember(int i)
    {
        if (_network.Cycles.Any)
            _trail.Push((i, _earliest[i], _latest[i], _culprit[i]));
    }

    /// <summary>Takes back all down to the activity that set the end, and makes that one later.</summary>
    /// <returns>Its place in the list; below 0 when nothing can be done.</returns>
    private int PutBack(int failed, int by, int[] starts)
    {
        var culprit = _culprit[failed];
        Late = culprit < 0 ? failed : -1;
        if (culprit < 0 || _network.IsDone[culprit] || by <= 0 || by >= WorkTime.Never / 2)
            return -1;
        _release[culprit] = _network.Start(culprit, starts[culprit] + by);
        if (_release[culprit] >= _horizon)
            return -1;
        while (_placed.TryPop(out var last))
        {
            _isPlaced[last.Activity] = false;
            _usage.Free(last.Activity, starts[last.Activity], _network.Finish(last.Activity, starts[last.Activity]));
            while (_trail.Count > last.Trail)
            {
                var (i, earliest, latest, before) = _trail.Pop();
                (_earliest[i], _latest[i], _culprit[i]) = (earliest, latest, before);
            }

            if (last.Activity == culprit)
                return last.Place;
        }

        return -1;
    }
}
