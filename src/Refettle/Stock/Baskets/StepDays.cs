using NodaTime;
using Refettle.Timeline;
using Refettle.Timeline.Network;
using Refettle.Timeline.Scheduling;

namespace Refettle.Stock.Baskets;

/// <summary>The day on which what goes onto a place is first needed: that of the first task that takes it.</summary>
public static class StepDays
{
    /// <summary>By a timeline.</summary>
    public static IReadOnlyDictionary<string, DateOnly> Of(IEnumerable<PlannedTask> tasks) =>
        First(tasks.Select(task => (task.Task, task.Start)));

    /// <summary>By the first schedule of some tasks; empty where there are no spells, or no order works.</summary>
    public static IReadOnlyDictionary<string, DateOnly> Of(Car car, TaskNetwork network, Instant now, CancellationToken cancel = default)
    {
        var made = Projection.Of(car, network, now);
        if (!made.IsGood
            || new FirstScheduler()
                .Solve(new(made.Value.Unpressed), new(TimeSpan.FromSeconds(1)), null, cancel).Schedule is not { } schedule)
            return First([]);
        return First(made.Value.Tasks.Select((task, i) => (task, made.Value.Clock.At(schedule.Starts[i]))));
    }

    private static Dictionary<string, DateOnly> First(IEnumerable<(WorkTask Task, LocalDateTime Start)> tasks) =>
        tasks.SelectMany(task => task.Task.Parts.Select(place => (place.Thing, Day: task.Start.Date.ToDateOnly())))
            .GroupBy(one => one.Thing).ToDictionary(place => place.Key, place => place.Min(one => one.Day));
}
