namespace Refettle.Timeline.Scheduling;

/// <summary>The stretches in which an activity can be worked on, and where a start, a finish and a worked time lie on them.</summary>
/// <remarks>Windows that touch count as one. Every question is answered by one look into a table.</remarks>
public sealed class WorkTime
{
    /// <summary>No such time: later than every time. Lags of a year in minutes can be added to it without overflow.</summary>
    public const int Never = 1_000_000_000;

    private readonly int[] _starts;
    private readonly int[] _ends;

    /// <summary>Worked time before each window, and at last the whole of it.</summary>
    private readonly int[] _before;

    private readonly Locator _byStart;
    private readonly Locator _byWorked;

    private WorkTime(IReadOnlyList<Window> windows)
    {
        _starts = [.. windows.Select(window => window.Start)];
        _ends = [.. windows.Select(window => window.End)];
        _before = new int[windows.Count + 1];
        for (var i = 0; i < windows.Count; i++)
            _before[i + 1] = _before[i] + windows[i].End - windows[i].Start;
        (_byStart, _byWorked) = (new(_starts), new(_before));
    }

    public int Count => _starts.Length;

    /// <summary>All the time there is to work.</summary>
    public int Total => _before[^1];

    public Window this[int index] => new(_starts[index], _ends[index]);

    /// <summary>When all the resources an activity needs are open; null when that is always.</summary>
    public static WorkTime? Of(Project project, IEnumerable<int> resources)
    {
        ValueList<Window>? common = null;
        foreach (var open in resources.Select(resource => project.Resources[resource].Open).OfType<ValueList<Window>>())
            common = common is { } known ? Stretches.Both(known, Stretches.Joined(open)) : Stretches.Joined(open);
        return common is { } windows ? new(windows) : null;
    }

    /// <summary>Time worked up to a moment.</summary>
    public int Worked(int time)
    {
        var i = LastStartingAtOrBefore(time);
        return i < 0 ? 0 : _before[i] + Math.Min(time, _ends[i]) - _starts[i];
    }

    /// <summary>The moment at which work goes on after so much worked time: the beginning of the next minute worked.</summary>
    public int Begin(int worked)
    {
        if (worked >= Total)
            return Never;
        var i = WindowOf(worked);
        return _starts[i] + worked - _before[i];
    }

    /// <summary>The moment at which so much has been worked: the end of the last minute worked, for more than 0.</summary>
    public int End(int worked)
    {
        if (worked > Total)
            return Never;
        var i = WindowOf(worked - 1);
        return _starts[i] + worked - _before[i];
    }

    /// <summary>The worked time up to a finish at this time or the first one after it.</summary>
    public int WorkedByFinishFrom(int time)
    {
        var i = LastStartingAtOrBefore(time - 1);
        if (i < 0)
            return 0;
        return time <= _ends[i] ? _before[i] + time - _starts[i] : _before[i + 1] + 1;
    }

    /// <summary>The first start from a time on, after which a duration fits into one window.</summary>
    public int UnbrokenFrom(int time, int duration)
    {
        for (var i = Math.Max(0, LastStartingAtOrBefore(time)); i < _starts.Length; i++)
        {
            var start = Math.Max(time, _starts[i]);
            if (start + duration <= _ends[i])
                return start;
        }

        return Never;
    }

    /// <summary>The last start with a finish up to a time, where a duration fits into one window.</summary>
    public int UnbrokenUntil(int time, int duration)
    {
        for (var i = LastStartingAtOrBefore(time); i >= 0; i--)
        {
            var start = Math.Min(time, _ends[i]) - duration;
            if (start >= _starts[i])
                return start;
        }

        return -Never;
    }

    /// <summary>The same with time running backwards from an origin.</summary>
    public WorkTime Mirrored(int origin) =>
        new([.. _starts.Zip(_ends, (start, end) => new Window(origin - end, origin - start)).Reverse()]);

    private int LastStartingAtOrBefore(int time) => _byStart.LastAtOrBefore(time);

    private int WindowOf(int worked) => _byWorked.LastAtOrBefore(worked);
}
