namespace Refettle.Timeline.Scheduling;

/// <summary>How much of each resource is held when.</summary>
internal abstract class Usage
{
    /// <summary>Nothing is held; no time before the given one will be asked about.</summary>
    public abstract void Clear(int from);

    /// <summary>The first start from a time on that windows and what is held allow; <see cref="WorkTime.Never"/> when there is none.</summary>
    public abstract int FirstFit(int activity, int from);

    public abstract void Hold(int activity, int start, int finish);

    public static Usage For(Network network) => UnitUsage.Suits(network) ? new UnitUsage(network) : new StepUsage(network);
}

/// <summary>Use as a step function of time for each resource: for windows and long times.</summary>
internal sealed class StepUsage(Network network) : Usage
{
    private readonly Steps[] _steps = [.. network.Capacity.Select(_ => new Steps())];

    public override void Clear(int from)
    {
        foreach (var steps in _steps)
            steps.Clear();
    }

    public override int FirstFit(int activity, int from)
    {
        var needs = network.Needs[activity];
        for (var start = network.Start(activity, from); ;)
        {
            var finish = network.Finish(activity, start);
            if (finish >= WorkTime.Never)
                return WorkTime.Never;
            var next = start;
            for (var k = 0; k < needs.Length && next == start; k += 2)
                next = _steps[needs[k]].Blocked(start, finish, network.Capacity[needs[k]] - needs[k + 1]);
            if (next == start)
                return start;
            if (next >= WorkTime.Never)
                return WorkTime.Never;
            start = network.Start(activity, next);
        }
    }

    public override void Hold(int activity, int start, int finish) => Add(activity, start, finish, 1);

    /// <summary>Takes back what was held.</summary>
    public void Free(int activity, int start, int finish) => Add(activity, start, finish, -1);

    private void Add(int activity, int start, int finish, int times)
    {
        var needs = network.Needs[activity];
        for (var k = 0; k < needs.Length && finish > start; k += 2)
            _steps[needs[k]].Add(start, finish, times * needs[k + 1]);
    }

    private sealed class Steps
    {
        private int[] _at = new int[16];
        private int[] _held = new int[16];
        private int _count;

        public void Clear()
        {
            (_at[0], _held[0], _count) = (-WorkTime.Never, 0, 1);
        }

        /// <summary>The start itself when never more than so much is held from it to the finish; else the end of the last stretch with more.</summary>
        public int Blocked(int start, int finish, int most)
        {
            if (most < 0)
                return WorkTime.Never;
            for (var i = StepAt(finish - 1); i >= 0; i--)
            {
                if (_held[i] > most)
                    return i + 1 < _count ? _at[i + 1] : WorkTime.Never;
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
        }

        private int StepAt(int time)
        {
            var i = Array.BinarySearch(_at, 0, _count, time);
            return i >= 0 ? i : ~i - 1;
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
    }
}
