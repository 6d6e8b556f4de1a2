using Refettle.Timeline;

namespace Refettle.Forecast.Policy;

/// <summary>Plays one future after another by the list policy; one for each thread.</summary>
/// <remarks>Serial generation: each activity, in the order of the list, starts as early as its lags, windows and resources let it, in a gap
/// that those before it left if it fits there. A recoat window that closes before the activity can
/// start is counted, not waited for.</remarks>
internal sealed class FutureRun
{
    private readonly Course _course;
    private readonly Occupancy[] _resources;
    private readonly int[][] _ends;

    public FutureRun(Course course)
    {
        _course = course;
        _resources = [.. course.Capacity.Select(capacity => new Occupancy(capacity, course.Count))];
        _ends = [.. course.Calendars.Select(calendar => calendar.Ends.ToArray())];
        (Starts, Finishes, Cause) = (new int[course.Count], new int[course.Count], new int[course.Count]);
    }

    public int[] Starts { get; }

    public int[] Finishes { get; }

    /// <summary>For each activity the one that it had to wait for; below 0 when only for its windows or its earliest start.</summary>
    public int[] Cause { get; }

    /// <summary>Leaves out the windows whose spells do not all come about.</summary>
    public void Miss(ReadOnlySpan<bool> missed)
    {
        for (var calendar = 0; calendar < _ends.Length; calendar++)
        {
            var times = _course.Calendars[calendar];
            for (var window = 0; window < times.Spells.Length; window++)
                _ends[calendar][window] = Any(times.Spells[window], missed) ? -1 : times.Ends[window];
        }
    }

    /// <summary>Plays a future.</summary>
    /// <param name="durations">By the numbers of the course, <paramref name="stride"/> apart.</param>
    /// <returns>The last finish; <see cref="OpenTimes.Never"/> when the windows do not suffice.</returns>
    public int Play(ReadOnlySpan<int> durations, int stride)
    {
        var last = 0;
        foreach (var resource in _resources)
            resource.Clear();
        for (var i = 0; i < _course.Count; i++)
        {
            if (_course.Done[i] is { } done)
            {
                Done(i, done);
                continue;
            }

            var ready = Ready(i);
            if (ready >= OpenTimes.Never)
                (Starts[i], Finishes[i]) = (OpenTimes.Never, OpenTimes.Never);
            else
                Put(i, ready, durations[i * stride]);
            last = Math.Max(last, Finishes[i]);
        }

        return last;
    }

    private void Done(int activity, Window done)
    {
        (Starts[activity], Finishes[activity], Cause[activity]) = (done.Start, done.End, -1);
        foreach (ref readonly var demand in done.End > Math.Max(0, done.Start) ? _course.Demands[activity].AsSpan() : [])
            _resources[demand.Resource].Take(Math.Max(0, done.Start), done.End, demand.Units, activity);
    }

    private int Ready(int activity)
    {
        var (ready, cause) = (_course.Earliest[activity], -1);
        foreach (ref readonly var arc in _course.Arcs[activity].AsSpan())
        {
            var from = arc.FromStart ? Starts[arc.Before] : Finishes[arc.Before];
            var time = from >= OpenTimes.Never ? OpenTimes.Never : from + arc.Least;
            if (time > ready)
                (ready, cause) = (time, arc.Before);
        }

        Cause[activity] = cause;
        return ready;
    }

    private void Put(int activity, int ready, int duration)
    {
        var demands = duration == 0 ? [] : _course.Demands[activity].AsSpan();
        var (start, finish) = Span(activity, ready, duration);
        for (var i = 0; i < demands.Length && finish < OpenTimes.Never;)
        {
            if (_resources[demands[i].Resource].Fits(start, finish, demands[i].Units, out var next, out var by))
            {
                i++;
                continue;
            }

            Cause[activity] = by;
            (start, finish) = Span(activity, next, duration);
            i = 0;
        }

        (Starts[activity], Finishes[activity]) = finish < OpenTimes.Never ? (start, finish) : (OpenTimes.Never, OpenTimes.Never);
        foreach (ref readonly var demand in finish < OpenTimes.Never ? demands : [])
            _resources[demand.Resource].Take(start, Until(demand.Resource, activity, finish), demand.Units, activity);
    }

    /// <summary>Start and finish when nothing but the windows speaks against starting at a time.</summary>
    private (int Start, int Finish) Span(int activity, int ready, int duration)
    {
        var number = _course.CalendarOf[activity];
        if (number < 0 || duration == 0)
            return (ready, ready + duration);
        var (calendar, ends) = (_course.Calendars[number], _ends[number]);
        return _course.Pace[activity] == Pace.Pausing
            ? Pausing(calendar.Starts, ends, calendar.From(ready), ready, duration)
            : Unbroken(calendar, ends, ready, duration);
    }

    private static (int Start, int Finish) Pausing(int[] starts, int[] ends, int window, int ready, int duration)
    {
        while (ends[window] <= ready)
            window++;
        var time = Math.Max(ready, starts[window]);
        var start = time;
        while (ends[window] - time < duration)
        {
            if (ends[window] > 0)
                duration -= ends[window] - time;
            time = starts[++window];
        }

        return (start, time + duration);
    }

    // What is longer than any window starts in one of the longest and runs over its end.
    private static (int Start, int Finish) Unbroken(OpenTimes calendar, int[] ends, int ready, int duration)
    {
        var (window, needed) = (calendar.From(ready), Math.Min(duration, calendar.Longest));
        while (ends[window] <= ready || ends[window] - Math.Max(ready, calendar.Starts[window]) < needed)
            window++;
        var start = Math.Max(ready, calendar.Starts[window]);
        return (start, start + duration);
    }

    /// <summary>Up to when a resource counts as taken: one that closed at the finish is wanted by nobody before it opens again.</summary>
    private int Until(int resource, int activity, int finish)
    {
        var number = _course.Keeps[resource];
        if (number < 0 || number != _course.CalendarOf[activity])
            return finish;
        var window = _course.Calendars[number].From(finish);
        while (_ends[number][window] <= finish)
            window++;
        return Math.Max(finish, _course.Calendars[number].Starts[window]);
    }

    private static bool Any(int[] spells, ReadOnlySpan<bool> missed)
    {
        foreach (var spell in spells)
        {
            if (missed[spell])
                return true;
        }

        return false;
    }
}
