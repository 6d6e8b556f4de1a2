namespace Refettle.Timeline.Scheduling;

/// <summary>Use as a step function of time for each resource: for windows and long times.</summary>
/// <remarks>A resource that is only held while it is open is looked at in its own working time. There one evening follows the other
/// without a gap, so what is taken is one step, and one look passes over weeks.</remarks>
internal sealed class StepUsage : Usage
{
    private readonly Network _network;
    private readonly Steps[] _steps;
    private readonly WorkTime?[] _axis;

    public StepUsage(Network network)
    {
        _network = network;
        _steps = [.. network.Capacity.Select(_ => new Steps())];
        _axis = [.. network.ResourceTime.Select((time, r) =>
            Enumerable.Range(0, network.Count).Any(i => !network.IsDone[i] && network.TimeOf(i) is null && network.Need(i, r) > 0)
                ? null
                : time)];
    }

    public override void Clear(int from)
    {
        foreach (var steps in _steps)
            steps.Clear();
    }

    public override int FirstFit(int activity, int from)
    {
        for (var start = _network.Start(activity, from); ;)
        {
            var finish = _network.Finish(activity, start);
            if (finish >= WorkTime.Never)
                return WorkTime.Never;
            var next = Blocked(activity, start, finish);
            if (next == start || next >= WorkTime.Never)
                return next;
            start = _network.Start(activity, next);
        }
    }

    public override void Hold(int activity, int start, int finish) => Add(activity, start, finish, 1);

    public override void Free(int activity, int start, int finish) => Add(activity, start, finish, -1);

    /// <summary>The start itself when it is free; else the first moment at which what is in the way has ended.</summary>
    private int Blocked(int activity, int start, int finish)
    {
        var needs = _network.Needs[activity];
        for (var k = 0; k < needs.Length; k += 2)
        {
            var (r, most) = (needs[k], _network.Capacity[needs[k]] - needs[k + 1]);
            var (from, to) = _axis[r] is { } axis ? (axis.Worked(start), axis.Worked(finish)) : (start, finish);
            var next = _steps[r].Blocked(from, to, most);
            if (next != from)
                return next >= WorkTime.Never || _axis[r] is not { } open ? next : open.Begin(next);
        }

        return start;
    }

    private void Add(int activity, int start, int finish, int times)
    {
        var needs = _network.Needs[activity];
        for (var k = 0; k < needs.Length; k += 2)
        {
            var (from, to) = _axis[needs[k]] is { } axis ? (axis.Worked(start), axis.Worked(finish)) : (start, finish);
            if (to > from)
                _steps[needs[k]].Add(from, to, times * needs[k + 1]);
        }
    }
}
