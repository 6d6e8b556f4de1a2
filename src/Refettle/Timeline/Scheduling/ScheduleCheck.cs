namespace Refettle.Timeline.Scheduling;

/// <summary>Holds a schedule against its project, from the meaning of the words alone: it shares nothing with the schedulers.</summary>
public static class ScheduleCheck
{
    private const string Report = "This is a fault of the program: please report it.";

    /// <summary>Everything wrong with the schedule, in words; empty when it keeps all that the project asks.</summary>
    public static ValueList<Fault> Of(Project project, Schedule schedule)
    {
        var count = project.Activities.Count;
        if (schedule.Starts.Count != count || schedule.Finishes.Count != count)
            return [new("schedule", $"it has {schedule.Starts.Count} starts and {schedule.Finishes.Count} finishes for {count} activities",
                Report)];
        return Enumerable.Range(0, count).SelectMany(i => OfActivity(project, schedule, i))
            .Concat(Enumerable.Range(0, project.Resources.Count).SelectMany(r => OfResource(project, schedule, r)))
            .Concat(project.Lags.SelectMany(lag => OfLag(project, schedule, lag))).ToValueList();
    }

    private static IEnumerable<Fault> OfActivity(Project project, Schedule schedule, int i)
    {
        var activity = project.Activities[i];
        var (start, finish) = (schedule.Starts[i], schedule.Finishes[i]);
        var place = $"activity {activity.Id}";
        if (activity.Done is { } done)
        {
            if (done != new Window(start, finish))
                yield return new(place, $"it was done from {done.Start} to {done.End}, the schedule says {start} to {finish}", Report);
            yield break;
        }

        if (start < activity.Earliest)
            yield return new(place, $"it starts at {start}, before its earliest start {activity.Earliest}", Report);
        if (activity.FixedStart is { } settled && start != settled)
            yield return new(place, $"it starts at {start}, not at the settled {settled}", Report);
        if (finish > activity.LatestFinish)
            yield return new(place, $"it finishes at {finish}, after its latest finish {activity.LatestFinish}", Report);
        if (WrongTime(project, activity, start, finish) is { } wrong)
            yield return new(place, wrong, Report);
    }

    private static string? WrongTime(Project project, Activity activity, int start, int finish)
    {
        var windows = project.Resources.Where((resource, r) => activity.Demands[r] > 0 && resource.Open is not null)
            .Select(resource => resource.Open!).ToList();
        if (activity.Pace == Pace.WallClock || activity.Duration == 0 || windows.Count == 0 || finish <= start)
            return finish - start == activity.Duration ? null : $"it goes from {start} to {finish} and needs {activity.Duration}";

        // Openness changes only where a window starts or ends, so it is enough to look at each stretch between two such moments.
        var moments = windows.SelectMany(open => open).SelectMany(window => new[] { window.Start, window.End })
            .Where(moment => moment > start && moment < finish).Append(start).Append(finish).Distinct().Order().ToList();
        var stretches = moments.Zip(moments.Skip(1),
            (from, to) => (From: from, To: to, IsOpen: windows.All(open => open.Any(window => window.Start <= from && window.End >= to))))
            .ToList();
        if (activity.Pace == Pace.Unbroken && (finish - start != activity.Duration || stretches.Any(stretch => !stretch.IsOpen)))
            return $"it goes from {start} to {finish}; it needs {activity.Duration} without a break inside a window";
        var worked = stretches.Where(stretch => stretch.IsOpen).Sum(stretch => stretch.To - stretch.From);
        return worked != activity.Duration ? $"from {start} to {finish} it is worked on for {worked}, it needs {activity.Duration}"
            : !stretches[0].IsOpen || !stretches[^1].IsOpen ? $"it starts at {start} or finishes at {finish} while closed"
            : null;
    }

    private static IEnumerable<Fault> OfResource(Project project, Schedule schedule, int r)
    {
        var holders = Enumerable.Range(0, project.Activities.Count)
            .Where(i => project.Activities[i].Demands[r] > 0 && schedule.Finishes[i] > schedule.Starts[i]).ToList();
        foreach (var moment in holders.Select(i => schedule.Starts[i]).Distinct().Order())
        {
            var now = holders.Where(i => schedule.Starts[i] <= moment && schedule.Finishes[i] > moment).ToList();
            var held = now.Sum(i => (long)project.Activities[i].Demands[r]);
            if (held > project.Resources[r].Capacity && now.Exists(i => project.Activities[i].Done is null))
                yield return new($"resource {project.Resources[r].Id}",
                    $"at {moment} {string.Join(", ", now.Select(i => project.Activities[i].Id))} hold {held}, there are {project.Resources[r].Capacity}", Report);
        }
    }

    private static IEnumerable<Fault> OfLag(Project project, Schedule schedule, Lag lag)
    {
        var (before, after) = (project.Activities[lag.Before], project.Activities[lag.After]);
        if (after.Done is not null)
            yield break;
        var from = lag.Anchor == Anchor.Start ? schedule.Starts[lag.Before] : schedule.Finishes[lag.Before];
        var passed = (long)schedule.Starts[lag.After] - from;
        var place = $"lag from {before.Id} to {after.Id}";
        var end = lag.Anchor == Anchor.Start ? "start" : "finish";
        if (passed < lag.Least)
            yield return new(place, $"{after.Id} starts {passed} after the {end} of {before.Id}, {lag.Least} is the least", Report);
        if (passed > lag.Most)
            yield return new(place, $"{after.Id} starts {passed} after the {end} of {before.Id}, {lag.Most} is the most", Report);
    }
}
