namespace Refettle.Timeline.Scheduling;

/// <summary>Orders of the activities in which none comes before one that must be placed first.</summary>
internal sealed class Lists(Network network)
{
    private readonly PriorityQueue<int, (long Key, int Index)> _ready = new();
    private readonly int[] _left = new int[network.Count];

    /// <summary>Takes, again and again, the one with the least key among those that can come next.</summary>
    public void Fill(ReadOnlySpan<long> keys, Span<int> list)
    {
        network.Cycles.Predecessors.CopyTo(_left, 0);
        _ready.Clear();
        for (var i = 0; i < _left.Length; i++)
        {
            if (_left[i] == 0)
                _ready.Enqueue(i, (keys[i], i));
        }

        for (var place = 0; place < list.Length; place++)
        {
            var next = _ready.Dequeue();
            list[place] = next;
            foreach (var after in network.Cycles.Successors[next])
            {
                if (--_left[after] == 0)
                    _ready.Enqueue(after, (keys[after], after));
            }
        }
    }
}
