using Refettle.Timeline.Scheduling;

namespace Refettle.Timeline;

/// <summary>The activities that hold up the finish of a schedule: going back from the last one, whatever each had to wait for.</summary>
public static class CriticalChain
{
    /// <summary>Places of the activities. Each of them starts as soon as the one before it in the chain, or the
    /// resource that one held, let it.</summary>
    public static ValueList<int> Of(Project project, Schedule schedule)
    {
        var chain = new List<int>();
        var seen = new HashSet<int>();
        int? at = Enumerable.Range(0, schedule.Finishes.Count).Where(i => schedule.Finishes[i] == schedule.Makespan).Select(i => (int?)i)
            .FirstOrDefault();
        for (; at is { } i && seen.Add(i); at = HeldUpBy(project, schedule, i))
            chain.Add(i);
        chain.Reverse();
        return chain.ToValueList();
    }

    /// <summary>The activity after which this one started as soon as it could; null when nothing but the beginning held it.</summary>
    private static int? HeldUpBy(Project project, Schedule schedule, int i)
    {
        var start = schedule.Starts[i];
        if (project.Activities[i].Done is not null || project.Activities[i].FixedStart is not null)
            return null;
        var work = WorkTime.Of(project,
            Enumerable.Range(0, project.Resources.Count).Where(resource => project.Activities[i].Demands[resource] > 0));
        bool IsAsSoonAsCan(int moment) =>
            moment <= start && (work is null ? moment == start : Earliest(project.Activities[i], work, moment) == start);
        var byLag = project.Lags.Where(lag => lag.After == i)
            .Select(lag => (Before: lag.Before,
                Moment: (lag.Anchor == Anchor.Start ? schedule.Starts[lag.Before] : schedule.Finishes[lag.Before]) + lag.Least));
        var byResource = Enumerable.Range(0, project.Activities.Count).Where(other => other != i && Compete(project, other, i))
            .Select(other => (Before: other, Moment: schedule.Finishes[other]));
        return byLag.Concat(byResource).Where(one => IsAsSoonAsCan(one.Moment)).OrderByDescending(one => one.Moment)
            .Select(one => (int?)one.Before).FirstOrDefault();
    }

    private static int Earliest(Activity activity, WorkTime work, int moment)
    {
        if (activity.Duration == 0)
            return moment;
        return activity.Pace == Pace.Unbroken ? work.UnbrokenFrom(moment, activity.Duration) : work.Begin(work.Worked(moment));
    }

    /// <summary>They cannot both hold a resource.</summary>
    private static bool Compete(Project project, int one, int other) => project.Activities[one].Duration > 0
        && Enumerable.Range(0, project.Resources.Count).Any(resource => project.Activities[one].Demands[resource] is > 0 and var first
            && project.Activities[other].Demands[resource] is > 0 and var second && first + second > project.Resources[resource].Capacity);
}
