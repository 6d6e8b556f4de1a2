using Refettle.Timeline;

namespace Refettle.Solvers.Tests.Scheduling;

/// <summary>Every schedule of a small project, minute by minute: for comparison. It shares nothing with the schedulers.</summary>
internal sealed class Exhaustive(Project project, int horizon)
{
    private readonly int _count = project.Activities.Count;
    private readonly int[] _starts = new int[project.Activities.Count];
    private readonly int[] _finishes = new int[project.Activities.Count];

    /// <summary>The earliest last finish; null when there is no schedule up to the horizon.</summary>
    public int? Finish
    {
        get
        {
            int? best = null;
            Each(0, () => best ?? horizon + 1, schedule => best = schedule.Makespan);
            return best;
        }
    }

    /// <summary>The least of a cost among the schedules that finish until a time.</summary>
    public long Least(int until, Func<Schedule, long> cost)
    {
        var least = long.MaxValue;
        Each(0, () => until + 1, schedule => least = Math.Min(least, cost(schedule)));
        return least;
    }

    private void Each(int i, Func<int> before, Action<Schedule> found)
    {
        if (i == _count)
        {
            found(new([.. _starts], [.. _finishes]));
            return;
        }

        for (var start = 0; start < before(); start++)
        {
            if (FinishOf(project.Activities[i], start) is not { } finish || finish >= before())
                continue;
            (_starts[i], _finishes[i]) = (start, finish);
            if (KeepsLags(i) && KeepsCapacity(i))
                Each(i + 1, before, found);
        }
    }

    private int? FinishOf(Activity activity, int start)
    {
        if (start < activity.Earliest || (activity.FixedStart is { } settled && settled != start))
            return null;
        var (time, left) = (start, activity.Duration);
        for (; left > 0; time++)
        {
            var isOpen = activity.Pace == Pace.WallClock || IsOpen(activity, time);
            if (time > horizon || (!isOpen && (activity.Pace == Pace.Unbroken || time == start)))
                return null;
            left -= isOpen ? 1 : 0;
        }

        return time <= (activity.LatestFinish ?? int.MaxValue) ? time : null;
    }

    private bool IsOpen(Activity activity, int time) => !project.Resources.Where((resource, r) =>
        activity.Demands[r] > 0 && resource.Open is { } open && !open.Any(window => window.Start <= time && time < window.End)).Any();

    private bool KeepsLags(int last) => project.Lags.Where(lag => Math.Max(lag.Before, lag.After) == last).All(lag =>
    {
        var passed = _starts[lag.After] - (lag.Anchor == Anchor.Start ? _starts[lag.Before] : _finishes[lag.Before]);
        return passed >= lag.Least && passed <= (lag.Most ?? int.MaxValue);
    });

    private bool KeepsCapacity(int last)
    {
        for (var time = _starts[last]; time < _finishes[last]; time++)
        {
            for (var r = 0; r < project.Resources.Count; r++)
            {
                var held = Enumerable.Range(0, last + 1).Where(i => _starts[i] <= time && time < _finishes[i])
                    .Sum(i => project.Activities[i].Demands[r]);
                if (project.Activities[last].Demands[r] > 0 && held > project.Resources[r].Capacity)
                    return false;
            }
        }

        return true;
    }
}
