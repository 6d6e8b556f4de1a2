namespace Refettle.Timeline.Scheduling;

/// <summary>A project as plain arrays, for the schedulers: what is done holds its time, lags are arcs, windows are working time.</summary>
internal sealed class Network
{
    public const int Never = WorkTime.Never;

    private readonly WorkTime?[] _time;
    private readonly bool[] _isUnbroken;

    private Network(int count, int[] capacity, int[] duration, WorkTime?[] time, bool[] isUnbroken, int[][] needs, IReadOnlyList<Arc> arcs)
    {
        (Count, Capacity, Duration, _time, _isUnbroken, Needs) = (count, capacity, duration, time, isUnbroken, needs);
        (Release, Deadline, DoneFrom, DoneTo) = (new int[count], new int[count], new int[count], new int[count]);
        (IsDone, HasWindows, Arcs) = (new bool[count], Array.Exists(time, windows => windows is not null), arcs);
        Out = [.. Enumerable.Range(0, count).GroupJoin(arcs, i => i, arc => arc.From, (_, from) => from.ToArray())];
        In = [.. Enumerable.Range(0, count).GroupJoin(arcs, i => i, arc => arc.To, (_, to) => to.ToArray())];
        Cycles = new(this);
    }

    public int Count { get; }

    public int[] Capacity { get; }

    public int[] Duration { get; }

    /// <summary>For each activity the resources it needs, each followed by how much.</summary>
    public int[][] Needs { get; }

    /// <summary>The earliest start of each, before any arc.</summary>
    public int[] Release { get; }

    /// <summary>The latest finish of each, before any arc.</summary>
    public int[] Deadline { get; }

    public bool[] IsDone { get; }

    public int[] DoneFrom { get; }

    public int[] DoneTo { get; }

    public bool HasWindows { get; }

    public IReadOnlyList<Arc> Arcs { get; }

    public Arc[][] Out { get; }

    public Arc[][] In { get; }

    public Cycles Cycles { get; }

    /// <summary>When each resource is open; null when always.</summary>
    public WorkTime?[] ResourceTime { get; private set; } = [];

    public bool HasDone => Array.Exists(IsDone, done => done);

    public static Network Of(Project project)
    {
        var activities = project.Activities;
        int[][] needs = [.. activities.Select(activity => Enumerable.Range(0, activity.Demands.Count)
            .Where(r => activity.Demands[r] > 0 && (activity.Duration > 0 || activity.Done is not null))
            .SelectMany(r => new[] { r, activity.Demands[r] }).ToArray())];
        var known = new Dictionary<string, WorkTime?>();
        var network = new Network(activities.Count, [.. project.Resources.Select(resource => resource.Capacity)],
            [.. activities.Select(activity => activity.Done is { } done ? done.End - done.Start : activity.Duration)],
            [.. activities.Select((activity, i) => TimeOf(project, activity, needs[i], known))],
            [.. activities.Select(activity => activity.Pace == Pace.Unbroken)], needs, ArcsOf(project));
        network.ResourceTime = [.. project.Resources.Select((_, r) => WorkTime.Of(project, [r]))];
        for (var i = 0; i < activities.Count; i++)
            network.Settle(i, activities[i]);
        return network;
    }

    /// <summary>The same with time running backwards: every moment t becomes −t, starts become finishes.</summary>
    public Network Mirrored()
    {
        var mirrors = _time.OfType<WorkTime>().Distinct().ToDictionary(time => time, time => time.Mirrored(0));
        var mirror = new Network(Count, Capacity, Duration, [.. _time.Select(time => time is null ? null : mirrors[time])], _isUnbroken,
            Needs, [.. Arcs.Select(arc => arc.Mirrored)]);
        mirror.ResourceTime = [.. ResourceTime.Select(time => time?.Mirrored(0))];
        for (var i = 0; i < Count; i++)
        {
            (mirror.Release[i], mirror.Deadline[i]) = (-Deadline[i], -Release[i]);
            (mirror.IsDone[i], mirror.DoneFrom[i], mirror.DoneTo[i]) = (IsDone[i], -DoneTo[i], -DoneFrom[i]);
        }

        return mirror;
    }

    /// <summary>How much of a resource an activity needs.</summary>
    public int Need(int activity, int resource)
    {
        var needs = Needs[activity];
        for (var k = 0; k < needs.Length; k += 2)
        {
            if (needs[k] == resource)
                return needs[k + 1];
        }

        return 0;
    }

    public WorkTime? TimeOf(int activity) => _time[activity];

    public bool IsUnbroken(int activity) => _isUnbroken[activity];

    /// <summary>The first start allowed by windows from a time on.</summary>
    public int Start(int activity, int from)
    {
        if (_time[activity] is not { } time)
            return from;
        return _isUnbroken[activity] ? time.UnbrokenFrom(from, Duration[activity]) : time.Begin(time.Worked(from));
    }

    public int Finish(int activity, int start)
    {
        if (IsDone[activity])
            return DoneTo[activity];
        if (_time[activity] is not { } time || _isUnbroken[activity])
            return start + Duration[activity];
        return start >= Never ? Never : time.End(time.Worked(start) + Duration[activity]);
    }

    /// <summary>The first start with a finish at a time or later.</summary>
    public int StartToFinishFrom(int activity, int finish)
    {
        if (_time[activity] is not { } time || _isUnbroken[activity])
            return Start(activity, finish - Duration[activity]);
        return time.Begin(Math.Max(0, time.WorkedByFinishFrom(finish) - Duration[activity]));
    }

    /// <summary>The last start with a finish at a time or earlier.</summary>
    public int LastStart(int activity, int finish)
    {
        if (_time[activity] is not { } time)
            return finish - Duration[activity];
        if (_isUnbroken[activity])
            return time.UnbrokenUntil(finish, Duration[activity]);
        var before = time.Worked(finish) - Duration[activity];
        return before < 0 ? -Never : time.Begin(before);
    }

    /// <summary>The first start of the activity after that an arc allows, when the one before starts at a time.</summary>
    public int After(in Arc arc, int start)
    {
        var from = (arc.FromFinish ? Finish(arc.From, start) : start) + arc.Lag;
        return arc.ToFinish ? StartToFinishFrom(arc.To, from) : Start(arc.To, from);
    }

    /// <summary>The last start of the activity before that an arc allows, when the one after starts at a time.</summary>
    public int Before(in Arc arc, int start)
    {
        var until = (arc.ToFinish ? Finish(arc.To, start) : start) - arc.Lag;
        return arc.FromFinish ? LastStart(arc.From, until) : until;
    }

    private static WorkTime? TimeOf(Project project, Activity activity, int[] needs, Dictionary<string, WorkTime?> known)
    {
        if (activity.Pace == Pace.WallClock || activity.Duration == 0 || activity.Done is not null)
            return null;
        var resources = needs.Where((_, place) => place % 2 == 0).Where(resource => project.Resources[resource].Open is not null).ToList();
        var key = string.Join(',', resources);
        if (!known.TryGetValue(key, out var time))
            known[key] = time = WorkTime.Of(project, resources);
        return time;
    }

    private static List<Arc> ArcsOf(Project project)
    {
        var arcs = new List<Arc>();
        foreach (var lag in project.Lags.Where(lag => project.Activities[lag.After].Done is null))
        {
            var fromFinish = lag.Anchor == Anchor.Finish;
            arcs.Add(new(lag.Before, fromFinish, lag.After, false, lag.Least));
            if (lag.Most is { } most)
                arcs.Add(new(lag.After, false, lag.Before, fromFinish, -most));
        }

        return arcs;
    }

    private void Settle(int i, Activity activity)
    {
        (Release[i], Deadline[i]) = (activity.Earliest, activity.LatestFinish ?? Never);
        if (activity.Done is { } done)
            (IsDone[i], DoneFrom[i], DoneTo[i], Release[i], Deadline[i]) = (true, done.Start, done.End, done.Start, Never);
        else if (activity.FixedStart is { } start)
            (Release[i], Deadline[i]) =
                (Math.Max(start, Release[i]), Start(i, start) == start ? Math.Min(Deadline[i], Finish(i, start)) : -Never);
    }
}
