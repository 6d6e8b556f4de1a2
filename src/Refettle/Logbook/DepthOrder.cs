namespace Refettle.Logbook;

/// <summary>Finds the causal depth of entries that are sorted by device, sequence and identifier.</summary>
/// <remarks>Walks all chains at once; a chain whose next entry names one not reached yet waits for it. When all that is left waits,
/// references run in a circle: the circle is reported and cut at its first device.</remarks>
internal sealed class DepthOrder
{
    private const int Nothing = -1;

    private readonly Entry[] _all;
    private readonly List<Fault> _faults;
    private readonly Dictionary<Guid, int> _placeOf;
    private readonly Dictionary<int, List<int>> _waiting = [];
    private readonly Queue<int> _ready = [];
    private readonly int[] _depth;
    private readonly int[] _chainOf;
    private readonly List<int> _frontOf = [];
    private readonly HashSet<int> _cut = [];

    public DepthOrder(Entry[] sortedInChains, List<Fault> faults)
    {
        _all = sortedInChains;
        _faults = faults;
        _depth = new int[_all.Length];
        _chainOf = new int[_all.Length];
        _placeOf = new(_all.Length);
        for (var place = 0; place < _all.Length; place++)
            Enter(place);
    }

    /// <summary>For each entry its depth, and below that its place among the chains, in one number to sort by.</summary>
    public long[] DepthAndPlace()
    {
        Walk();
        var order = new long[_all.Length];
        for (var place = 0; place < _all.Length; place++)
        {
            while (_depth[place] == 0)
            {
                Cut(place);
                Walk();
            }

            order[place] = ((long)_depth[place] << 32) | (uint)place;
        }

        return order;
    }

    private void Enter(int place)
    {
        _placeOf[_all[place].Id] = place;
        if (place == 0 || _all[place].Device != _all[place - 1].Device)
        {
            _ready.Enqueue(_frontOf.Count);
            _frontOf.Add(place);
        }
        else if (_all[place].Sequence == _all[place - 1].Sequence)
        {
            _faults.Add(Fork(_all[place]));
        }

        _chainOf[place] = _frontOf.Count - 1;
    }

    private void Walk()
    {
        while (_ready.TryDequeue(out var chain))
        {
            while (_frontOf[chain] is var place && IsIn(chain, place) && TryReach(place))
                _frontOf[chain]++;
        }
    }

    private bool TryReach(int place)
    {
        if (WaitsFor(place) is var before and not Nothing)
        {
            (_waiting.TryGetValue(before, out var others) ? others : _waiting[before] = []).Add(_chainOf[place]);
            return false;
        }

        var depth = place > 0 && IsIn(_chainOf[place], place - 1) ? _depth[place - 1] : 0;
        foreach (var id in _all[place].After)
        {
            if (_placeOf.TryGetValue(id, out var named))
                depth = Math.Max(depth, _depth[named]);
        }

        _depth[place] = depth + 1;
        if (_waiting.Remove(place, out var released))
            released.ForEach(_ready.Enqueue);
        return true;
    }

    /// <summary>An entry named as earlier and not reached yet.</summary>
    private int WaitsFor(int place)
    {
        if (_cut.Contains(place))
            return Nothing;
        foreach (var id in _all[place].After)
        {
            if (_placeOf.TryGetValue(id, out var named) && _depth[named] == 0)
                return named;
        }

        return Nothing;
    }

    /// <summary>Follows what is waited for until it comes round, and lets the first of the circle go.</summary>
    private void Cut(int stuck)
    {
        var path = new List<int>();
        var seen = new HashSet<int>();
        var place = stuck;
        for (; seen.Add(place); place = _frontOf[_chainOf[WaitsFor(place)]])
            path.Add(place);
        var circle = path[path.IndexOf(place)..];
        var first = circle.Min();
        _faults.Add(new(
            $"entry {_all[first].Id}",
            circle.Count == 1 ? "it names itself or one after it as earlier" : $"it and {circle.Count - 1} more name each other as earlier",
            "One of them was forged or damaged; what this one names as earlier is not followed."));
        _cut.Add(first);
        _ready.Enqueue(_chainOf[first]);
    }

    private bool IsIn(int chain, int place) => place < _all.Length && _chainOf[place] == chain;

    private static Fault Fork(Entry entry) => new(
        $"entry {entry.Sequence} of device {entry.Device}", "there are two with this number",
        "Two copies of one device's logbook were both written to; both entries count.");
}
