using Refettle.Forecast.Policy;
using Refettle.Timeline;

namespace Refettle.Forecast;

/// <summary>Whether a played future could have happened: lags kept, work inside windows and as long as drawn, nothing taken twice.
/// It knows nothing of how the future was made.</summary>
internal static class FutureCheck
{
    /// <summary>What is wrong, in words; empty when nothing is. Activities that never finish are passed over.</summary>
    public static ValueList<string> Of(Project project, PlayedFuture future)
    {
        var ahead = Enumerable.Range(0, project.Activities.Count)
            .Where(place => future.Finishes[place] < OpenTimes.Never && project.Activities[place].Done is null).ToList();
        return [.. Early(project, future, ahead), .. ahead.SelectMany(place => Span(project, future, place)),
            .. Overfull(project, future, ahead)];
    }

    private static IEnumerable<string> Early(Project project, PlayedFuture future, List<int> ahead)
    {
        foreach (var place in ahead.Where(place => future.Starts[place] < project.Activities[place].Earliest))
            yield return $"{project.Activities[place].Id} starts before its earliest";
        foreach (var lag in project.Lags.Where(lag => ahead.Contains(lag.After)))
        {
            var from = lag.Anchor == Anchor.Start ? future.Starts[lag.Before] : future.Finishes[lag.Before];
            if (future.Starts[lag.After] < from + lag.Least)
                yield return $"{project.Activities[lag.After].Id} starts too soon after {project.Activities[lag.Before].Id}";
        }
    }

    private static IEnumerable<string> Span(Project project, PlayedFuture future, int place)
    {
        var (activity, start, finish) = (project.Activities[place], future.Starts[place], future.Finishes[place]);
        var needed = activity.Demands.Select((units, resource) => (units, resource))
            .Where(pair => pair.units > 0 && project.Resources[pair.resource].Open is not null)
            .Select(pair => Open(project, future, pair.resource)).ToList();
        if (activity.Pace == Pace.WallClock || needed.Count == 0 || future.Durations[place] == 0)
        {
            if (finish - start != future.Durations[place])
                yield return $"{activity.Id} is not as long as drawn";
            yield break;
        }

        var worked = Enumerable.Range(start, finish - start)
            .Count(minute => needed.TrueForAll(windows => windows.Exists(window => window.Start <= minute && minute < window.End)));
        if (activity.Pace == Pace.Pausing && worked != future.Durations[place])
            yield return $"{activity.Id} works {worked} of {future.Durations[place]}";
        if (activity.Pace == Pace.Unbroken && finish - start != future.Durations[place])
            yield return $"{activity.Id} is broken off";
    }

    private static List<Window> Open(Project project, PlayedFuture future, int resource) =>
        [.. project.Resources[resource].Open!.Where(window => !future.Missed.Contains((resource, window.Start)))];

    private static IEnumerable<string> Overfull(Project project, PlayedFuture future, List<int> ahead)
    {
        for (var resource = 0; resource < project.Resources.Count; resource++)
        {
            var holders = Enumerable.Range(0, project.Activities.Count).Where(place => project.Activities[place].Demands[resource] > 0
                && future.Starts[place] < future.Finishes[place] && future.Finishes[place] < OpenTimes.Never).ToList();
            foreach (var time in holders.Select(place => future.Starts[place]).Distinct())
            {
                var now = holders.Where(place => future.Starts[place] <= time && time < future.Finishes[place]).ToList();
                var taken = now.Sum(place => project.Activities[place].Demands[resource]);
                if (taken > project.Resources[resource].Capacity && now.Exists(ahead.Contains))
                    yield return $"{project.Resources[resource].Id} is taken {taken} times at {time}";
            }
        }
    }
}
