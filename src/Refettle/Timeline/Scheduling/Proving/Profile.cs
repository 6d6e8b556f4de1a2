using System.Numerics;
using System.Runtime.Intrinsics;

namespace Refettle.Timeline.Scheduling.Proving;

/// <summary>What is left of each resource at each time, after the activities that are under way then wherever their starts come to lie,
/// and what follows from it (Schutt, Feydy, Stuckey and Wallace 2011: time tables, explained time by time).</summary>
internal sealed class Profile
{
    /// <summary>How many resources there can be.</summary>
    public const int MostResources = 8;

    private readonly Bounds _bounds;
    private readonly int[] _duration;
    private readonly Vector128<short>[] _need;
    private readonly Vector128<short>[] _left;
    private readonly (int Activity, int Amount)[][] _users;
    private readonly int[] _capacity;
    private readonly int[] _seen;
    private readonly bool[] _isStirred;
    private readonly List<(int Activity, int Step)> _cover = [];
    private readonly bool _isImpossible;
    private int _steps;
    private int _from;
    private int _to;

    /// <param name="capacity">Of each resource.</param>
    /// <param name="need">Of each activity, what it takes of each resource.</param>
    public Profile(Bounds bounds, int[] duration, int[] capacity, int[][] need)
    {
        (_bounds, _duration, _capacity, _seen) = (bounds, duration, capacity, [.. bounds.Values]);
        _need = [.. need.Select(Pack)];
        _left = new Vector128<short>[Enumerable.Range(0, duration.Length).Max(i => bounds.Latest(i) + duration[i]) + 1];
        Array.Fill(_left, Pack(capacity));
        _users = [.. capacity.Select((_, r) => Enumerable.Range(0, duration.Length)
            .Where(i => need[i][r] > 0 && duration[i] > 0).Select(i => (i, need[i][r])).ToArray())];
        _isStirred = new bool[duration.Length];
        Array.Fill(_isStirred, true);
        for (var i = 0; i < duration.Length; i++)
            _isImpossible |= Take(i, bounds.Latest(i), bounds.Earliest(i) + duration[i]) >= 0;
        (_from, _to) = (0, _left.Length);
    }

    /// <summary>What follows from all steps taken is drawn.</summary>
    public bool IsUpToDate => _steps == _bounds.Count && _from >= _to;

    /// <summary>Looks at the steps taken since and draws what follows for all activities.</summary>
    /// <returns>False when something would have to be that cannot.</returns>
    public bool Follow()
    {
        if (_isImpossible)
            return false;
        while (_steps < _bounds.Count)
        {
            var step = _bounds.StepAt(_steps++);
            var (activity, from, to) = Added(step);
            (_seen[step.Side], _isStirred[activity]) = (step.After, true);
            if (from < to && Take(activity, from, to) is >= 0 and var full && !IsLeftTo(activity, full))
                return false;
        }

        for (var i = 0; i < _duration.Length; i++)
        {
            if ((_isStirred[i] || IsTouched(i)) && !(Delay(i) && Advance(i)))
                return false;
            _isStirred[i] = false;
        }

        (_from, _to) = (_left.Length, 0);
        return true;
    }

    /// <summary>Gives back what was taken since a step.</summary>
    public void TakeBack(int first)
    {
        while (_steps > first)
        {
            var step = _bounds.StepAt(--_steps);
            _seen[step.Side] = step.Before;
            var (activity, from, to) = Added(step);
            for (var time = from; time < to; time++)
                _left[time] += _need[activity];
        }

        (_from, _to) = (_left.Length, 0);
        Array.Clear(_isStirred);
    }

    /// <summary>Adds the statements from which it follows that an activity is not under way at a time, for want of a resource.</summary>
    /// <param name="before">What came to hold at this step or later does not count.</param>
    public void Explain(int activity, int resource, int time, int before, List<Statement> into)
    {
        var spare = Cover(activity, resource, time, before) + _need[activity][resource] - _capacity[resource] - 1;
        // The latest that can be done without are left out: what held earlier rules out more.
        foreach (var (other, step) in _cover)
        {
            var amount = _need[other][resource];
            if (amount <= spare && step >= 0)
            {
                spare -= amount;
                continue;
            }

            into.Add(Statement.From(other, time + 1 - _duration[other]));
            into.Add(Statement.Until(other, time));
        }
    }

    /// <summary>Gathers the others under way at a time, those that came to be so last first.</summary>
    /// <returns>What they take.</returns>
    private int Cover(int activity, int resource, int time, int before)
    {
        _cover.Clear();
        var sum = 0;
        foreach (var (other, amount) in _users[resource])
        {
            var (from, until) = (Statement.From(other, time + 1 - _duration[other]), Statement.Until(other, time));
            if (other == activity || !_bounds.Holds(from) || !_bounds.Holds(until))
                continue;
            var step = Math.Max(_bounds.StepOf(from), _bounds.StepOf(until));
            if (step >= before)
                continue;
            var place = _cover.Count;
            while (place > 0 && _cover[place - 1].Step < step)
                place--;
            _cover.Insert(place, (other, step));
            sum += amount;
        }

        return sum;
    }

    /// <summary>The time that an activity is newly under way at for certain.</summary>
    private (int Activity, int From, int To) Added(in Step step)
    {
        var activity = step.Side >> 1;
        var duration = _duration[activity];
        return (step.Side & 1) == 0
            ? (activity, Math.Max(-_seen[step.Side + 1], step.Before + duration), step.After + duration)
            : (activity, -step.After, Math.Min(-step.Before, _seen[step.Side - 1] + duration));
    }

    /// <returns>The last time at which more is taken than there is; below 0 when at none.</returns>
    private int Take(int activity, int from, int to)
    {
        var full = -1;
        for (var time = from; time < to; time++)
        {
            _left[time] -= _need[activity];
            if (Vector128.LessThanAny(_left[time], default))
                full = time;
        }

        if (from < to)
            (_from, _to) = (Math.Min(_from, from), Math.Max(_to, to));
        return full;
    }

    /// <summary>Holds against an activity that is under way for certain that there is no room for it.</summary>
    private bool IsLeftTo(int activity, int time) =>
        _bounds.TrySet(Statement.From(activity, time + 1), Reason.OfFull(Lacking(_left[time], default), time));

    private bool IsTouched(int activity) =>
        (_bounds.Earliest(activity) < _to && _bounds.Earliest(activity) + _duration[activity] > _from)
        || (_bounds.Latest(activity) < _to && _bounds.Latest(activity) + _duration[activity] > _from);

    /// <summary>Starts an activity later while there is no room for it where it begins.</summary>
    private bool Delay(int activity)
    {
        var (need, duration) = (_need[activity], _duration[activity]);
        var (start, latest) = (_bounds.Earliest(activity), _bounds.Latest(activity));
        for (var time = Math.Min(start + duration, latest) - 1; time >= start; time--)
        {
            if (!Vector128.GreaterThanAny(need, _left[time]))
                continue;
            if (!_bounds.TrySet(Statement.From(activity, time + 1), Reason.OfFull(Lacking(_left[time], need), time)))
                return false;
            start = time + 1;
            time = Math.Min(start + duration, latest);
        }

        return true;
    }

    /// <summary>Starts an activity earlier while there is no room for it where it ends.</summary>
    private bool Advance(int activity)
    {
        var (need, duration) = (_need[activity], _duration[activity]);
        var (earliest, start) = (_bounds.Earliest(activity), _bounds.Latest(activity));
        for (var time = Math.Max(start, earliest + duration); time < start + duration; time++)
        {
            if (!Vector128.GreaterThanAny(need, _left[time]))
                continue;
            if (!_bounds.TrySet(Statement.Until(activity, time - duration), Reason.OfFull(Lacking(_left[time], need), time)))
                return false;
            start = time - duration;
            time = Math.Max(start, earliest + duration) - 1;
        }

        return true;
    }

    private static int Lacking(Vector128<short> left, Vector128<short> need) =>
        BitOperations.TrailingZeroCount(Vector128.GreaterThan(need, left).ExtractMostSignificantBits());

    private static Vector128<short> Pack(int[] amounts)
    {
        Span<short> packed = stackalloc short[MostResources];
        for (var r = 0; r < amounts.Length; r++)
            packed[r] = (short)amounts[r];
        return Vector128.Create<short>(packed);
    }
}
