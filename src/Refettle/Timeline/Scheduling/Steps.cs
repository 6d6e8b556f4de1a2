namespace Refettle.Timeline.Scheduling;

/// <summary>How much is held, as few steps as there can be.</summary>
internal sealed class Steps
{
    private int[] _at = new int[16];
    private int[] _held = new int[16];
    private int _count;

    public Steps() => Clear();

    public void Clear() => (_at[0], _held[0], _count) = (-WorkTime.Never, 0, 1);

    /// <summary>The start itself when never more than so much is held from it to the finish; else the end
    /// of the last stretch with more.</summary>
    public int Blocked(int start, int finish, int most)
    {
        if (most < 0)
            return WorkTime.Never;
        for (var i = StepAt(finish - 1); i >= 0; i--)
        {
            if (_held[i] > most)
                return EndOfMore(i, most);
            if (_at[i] <= start)
                break;
        }

        return start;
    }

    public void Add(int start, int finish, int amount)
    {
        var first = Split(start);
        var last = Split(finish);
        for (var i = first; i < last; i++)
            _held[i] += amount;
        Join(last);
        Join(first);
    }

    private int EndOfMore(int i, int most)
    {
        while (i + 1 < _count && _held[i + 1] > most)
            i++;
        return i + 1 < _count ? _at[i + 1] : WorkTime.Never;
    }

    private int StepAt(int time)
    {
        if (_at[_count - 1] <= time)
            return _count - 1;
        // Halving without a branch to be guessed; the first step lies before every time.
        var (first, length) = (0, _count);
        while (length > 1)
        {
            var half = length >> 1;
            first = _at[first + half] <= time ? first + half : first;
            length -= half;
        }

        return first;
    }

    private int Split(int time)
    {
        var i = StepAt(time);
        if (_at[i] == time)
            return i;
        if (_count == _at.Length)
        {
            Array.Resize(ref _at, 2 * _count);
            Array.Resize(ref _held, 2 * _count);
        }

        Array.Copy(_at, i + 1, _at, i + 2, _count - i - 1);
        Array.Copy(_held, i + 1, _held, i + 2, _count - i - 1);
        (_at[i + 1], _held[i + 1]) = (time, _held[i]);
        _count++;
        return i + 1;
    }

    /// <summary>Takes a step away that is no step any more.</summary>
    private void Join(int i)
    {
        if (i == 0 || _held[i] != _held[i - 1])
            return;
        Array.Copy(_at, i + 1, _at, i, _count - i - 1);
        Array.Copy(_held, i + 1, _held, i, _count - i - 1);
        _count--;
    }
}
