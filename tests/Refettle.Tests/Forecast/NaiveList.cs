using Refettle.Timeline;

namespace Refettle.Tests.Forecast;

/// <summary>Serial generation as one would write it first: minute by minute, a count for each resource and minute, no cleverness.</summary>
internal static class NaiveList
{
    private const int Horizon = 4000;

    /// <returns>Starts and finishes; null where an activity is not finished within the windows.</returns>
    public static (int?[] Starts, int?[] Finishes) Play(
        Project project, IReadOnlyList<int> order, IReadOnlyList<int> durations, ICollection<(int, int)> missed)
    {
        var open = project.Resources.Select((resource, place) => Enumerable.Range(0, Horizon).Select(minute => resource.Open is null
            || resource.Open.Any(window => window.Start <= minute && minute < window.End && !missed.Contains((place, window.Start))))
            .ToArray()).ToArray();
        var used = project.Resources.Select(_ => new int[Horizon]).ToArray();
        var (starts, finishes) = (new int?[order.Count], new int?[order.Count]);
        foreach (var place in order)
        {
            var ready = Ready(project, place, starts, finishes);
            var span = ready is { } from ? First(project, place, from, durations[place], open, used) : null;
            (starts[place], finishes[place]) = (span?.Start, span?.Finish);
            if (span is { } taken && durations[place] > 0)
                Take(project.Activities[place], taken.Start, taken.Finish, used);
        }

        return (starts, finishes);
    }

    private static int? Ready(Project project, int place, int?[] starts, int?[] finishes)
    {
        int? ready = project.Activities[place].Earliest;
        foreach (var lag in project.Lags.Where(lag => lag.After == place))
            ready = (lag.Anchor == Anchor.Start ? starts[lag.Before] : finishes[lag.Before]) is { } time && ready is { } sofar
                ? Math.Max(sofar, time + lag.Least)
                : null;
        return ready;
    }

    private static (int Start, int Finish)? First(Project project, int place, int from, int duration, bool[][] open, int[][] used)
    {
        var activity = project.Activities[place];
        if (duration == 0)
            return (from, from);
        var wanted = Enumerable.Range(0, project.Resources.Count).Where(resource => activity.Demands[resource] > 0).ToList();
        var isFree = activity.Pace == Pace.WallClock || wanted.TrueForAll(resource => project.Resources[resource].Open is null);
        for (var start = from; start < Horizon; start++)
        {
            if (Finish(activity.Pace, start, duration,
                minute => isFree || wanted.TrueForAll(resource => open[resource][minute])) is { } finish
                && wanted.TrueForAll(resource => Enumerable.Range(start, finish - start)
                    .All(minute => used[resource][minute] + activity.Demands[resource] <= project.Resources[resource].Capacity)))
                return (start, finish);
        }

        return null;
    }

    private static int? Finish(Pace pace, int start, int duration, Func<int, bool> isOpen)
    {
        if (!isOpen(start))
            return null;
        var left = duration;
        for (var minute = start; minute < Horizon; minute++)
        {
            if (isOpen(minute) && --left == 0)
                return minute + 1;
            if (!isOpen(minute) && pace == Pace.Unbroken)
                return null;
        }

        return null;
    }

    private static void Take(Activity activity, int start, int finish, int[][] used)
    {
        for (var resource = 0; resource < used.Length; resource++)
        {
            for (var minute = start; minute < finish; minute++)
                used[resource][minute] += activity.Demands[resource];
        }
    }
}
