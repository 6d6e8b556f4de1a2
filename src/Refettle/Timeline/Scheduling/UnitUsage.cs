namespace Refettle.Timeline.Scheduling;

/// <summary>Use for each unit of time, all resources side by side in the lanes of one word: for short times without windows.</summary>
/// <remarks>Each lane holds what is free and above it a mark. Taking a need away from all lanes at once leaves every mark standing
/// exactly when there is enough of everything.</remarks>
internal sealed class UnitUsage : Usage
{
    private const int LongestTime = 20_000;

    private readonly ulong[] _need;
    private readonly int[] _duration;
    private readonly ulong _marks;
    private readonly ulong _allFree;
    private ulong[] _free = new ulong[256];
    private int _origin;
    private int _end;

    public UnitUsage(Network network)
    {
        var width = 64 / Math.Max(1, network.Capacity.Length);
        _duration = network.Duration;
        _need = [.. network.Needs.Select(needs => Word(needs, width))];
        for (var r = 0; r < network.Capacity.Length; r++)
        {
            _marks |= 1UL << (width * r + width - 1);
            _allFree |= (ulong)network.Capacity[r] << (width * r);
        }

        _allFree |= _marks;
        _end = _free.Length;
    }

    public static bool Suits(Network network)
    {
        var width = 64 / Math.Max(1, network.Capacity.Length);
        var most = width > 32 ? int.MaxValue : 1 << Math.Max(0, width - 1);
        return width >= 4 && !network.HasWindows && !network.HasDone
            && Array.TrueForAll(network.Capacity, capacity => capacity < most)
            && network.Needs
                .All(needs => Enumerable.Range(0, needs.Length / 2).All(k => needs[2 * k + 1] <= network.Capacity[needs[2 * k]]))
            && network.Release.Max() < LongestTime
            && network.Duration.Sum(duration => (long)duration) + network.Arcs.Sum(arc => (long)Math.Max(0, arc.Lag)) < LongestTime;
    }

    public override void Clear(int from)
    {
        _origin = from;
        Array.Fill(_free, _allFree, 0, Math.Min(_end, _free.Length));
        _end = 0;
    }

    public override int FirstFit(int activity, int from)
    {
        var (need, duration, marks, start) = (_need[activity], _duration[activity], _marks, from - _origin);
        if (need == 0)
            return from;
        MakeRoom(Math.Max(start, _end) + duration);
        var free = _free;
        for (var at = start + duration - 1; at >= start; at--)
        {
            if (((free[at] - need) & marks) == marks)
                continue;
            start = at + 1;
            at = start + duration;
        }

        return start + _origin;
    }

    public override void Hold(int activity, int start, int finish)
    {
        var (need, end) = (_need[activity], finish - _origin);
        if (need == 0)
            return;
        MakeRoom(end);
        _end = Math.Max(_end, end);
        for (var at = start - _origin; at < end; at++)
            _free[at] -= need;
    }

    public override void Free(int activity, int start, int finish)
    {
        for (var at = start - _origin; at < finish - _origin && _need[activity] != 0; at++)
            _free[at] += _need[activity];
    }

    private static ulong Word(int[] needs, int width)
    {
        var word = 0UL;
        for (var k = 0; k < needs.Length; k += 2)
            word |= (ulong)needs[k + 1] << (width * needs[k]);
        return word;
    }

    private void MakeRoom(int size)
    {
        if (size <= _free.Length)
            return;
        var before = _free.Length;
        Array.Resize(ref _free, 2 * size);
        Array.Fill(_free, _allFree, before, _free.Length - before);
    }
}
