namespace Refettle.Forecast.Policy;

/// <summary>How much of one resource is taken, over time: a row of stretches, the last without end and free.</summary>
internal sealed class Occupancy(int capacity, int activities)
{
    private readonly int[] _from = new int[2 * activities + 2];
    private readonly int[] _used = new int[2 * activities + 2];
    private readonly int[] _by = new int[2 * activities + 2];
    private int _count = 1;

    public void Clear()
    {
        _count = 1;
        (_from[0], _used[0], _by[0]) = (0, 0, -1);
    }

    /// <summary>Whether so many units are free from start to finish; if not, when the first stretch in the
    /// way ends and whose end that is.</summary>
    public bool Fits(int start, int finish, int units, out int next, out int by)
    {
        var stretch = At(start);
        (next, by) = (start, -1);
        for (; stretch < _count && _from[stretch] < finish; stretch++)
        {
            if (_used[stretch] + units <= capacity)
                continue;
            (next, by) = (_from[stretch + 1], _by[stretch + 1]);
            return false;
        }

        return true;
    }

    /// <summary>Takes units that <see cref="Fits"/> found free. Start is before finish.</summary>
    public void Take(int start, int finish, int units, int activity)
    {
        var first = At(start);
        if (_from[first] < start)
            Split(++first, start, _used[first - 1], -1);
        var end = first;
        for (; end < _count && _from[end] < finish; end++)
            _used[end] += units;
        if (end == _count || _from[end] > finish)
            Split(end, finish, _used[end - 1] - units, activity);
        else if (_used[end] == _used[end - 1])
            Join(end);
        else
            _by[end] = activity;
        if (first > 0 && _used[first] == _used[first - 1])
            Join(first);
    }

    // Most of what is added comes last.
    private int At(int time)
    {
        var stretch = _count - 1;
        while (_from[stretch] > time)
            stretch--;
        return stretch;
    }

    private void Split(int place, int from, int used, int by)
    {
        for (var i = _count; i > place; i--)
            (_from[i], _used[i], _by[i]) = (_from[i - 1], _used[i - 1], _by[i - 1]);
        _count++;
        (_from[place], _used[place], _by[place]) = (from, used, by);
    }

    private void Join(int place)
    {
        _count--;
        for (var i = place; i < _count; i++)
            (_from[i], _used[i], _by[i]) = (_from[i + 1], _used[i + 1], _by[i + 1]);
    }
}
