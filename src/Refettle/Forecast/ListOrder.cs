using Refettle.Timeline;

namespace Refettle.Forecast;

/// <summary>The list that every future follows.</summary>
public static class ListOrder
{
    /// <summary>The order of a schedule: by start, with what waits for another always behind it.</summary>
    /// <returns>Null when the lags go round in a circle.</returns>
    public static ValueList<int>? Of(Project project, Schedule schedule) =>
        By(project, place => (schedule.Starts[place], schedule.Finishes[place]));

    /// <summary>The project's own order, with what waits for another always behind it.</summary>
    /// <returns>Null when the lags go round in a circle.</returns>
    public static ValueList<int>? Of(Project project) => By(project, _ => (0, 0));

    private static ValueList<int>? By(Project project, Func<int, (int, int)> key)
    {
        var waits = new int[project.Activities.Count];
        var lags = project.Lags.Where(lag => project.Activities[lag.After].Done is null).ToList();
        foreach (var lag in lags)
            waits[lag.After]++;
        var after = lags.ToLookup(lag => lag.Before, lag => lag.After);
        var ready = new PriorityQueue<int, ((int, int), int)>(
            Enumerable.Range(0, waits.Length).Where(place => waits[place] == 0).Select(place => (place, (key(place), place))));
        var order = new List<int>();
        while (ready.TryDequeue(out var next, out _))
        {
            order.Add(next);
            foreach (var place in after[next].Where(place => --waits[place] == 0))
                ready.Enqueue(place, (key(place), place));
        }

        return order.Count == waits.Length ? order.ToValueList() : null;
    }
}
