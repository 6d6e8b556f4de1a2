using NodaTime;
using Refettle.Timeline.Network;
using Refettle.Timeline.Scheduling;

namespace Refettle.Timeline;

/// <summary>When the car could be moved if nothing were done before but what has to be.</summary>
internal static class MoveTimes
{
    private static readonly ScheduleLimits _each = new(TimeSpan.FromSeconds(1));

    /// <summary>For each move to a place how much of the owner's time passes until then; empty
    /// where there are none, or no spells.</summary>
    public static ValueList<MoveDue> Of(Car car, TaskNetwork network, Instant now, CancellationToken cancel) => network.Tasks
        .Where(task => task is { Kind: TaskKind.Move, At: not null, Mark: null }).Select(move => Due(car, network, move, now, cancel))
        .OfType<MoveDue>().ToValueList();

    /// <summary>When the first schedule ends; after every other one where what others set cannot be kept,
    /// and never where there is none.</summary>
    public static long End(Car car, TaskNetwork network, Instant now, CancellationToken cancel) =>
        Projection.Of(car, network, now) is { IsGood: true } made
        ? Makespan(made.Value.Project, cancel) ?? (long)WorkTime.Never + (Makespan(made.Value.Unpressed, cancel) ?? WorkTime.Never)
        : long.MaxValue;

    private static int? Makespan(Project project, CancellationToken cancel) =>
        new FirstScheduler().Solve(new(project), _each, null, cancel).Schedule?.Makespan;

    private static MoveDue? Due(Car car, TaskNetwork network, WorkTask move, Instant now, CancellationToken cancel)
    {
        var visit = Visit(network, move);
        if (visit.Count == 0)
            return null;
        var before = network.Links.ToLookup(link => link.After, link => link.Before);
        var needed = visit.SelectMany(task => Onward.From(task.Id, id => before[id])).Concat(visit.Select(task => task.Id)).ToHashSet();
        var only = new TaskNetwork(network.Tasks.Where(task => needed.Contains(task.Id)).ToValueList(),
            network.Links.Where(link => needed.Contains(link.Before) && needed.Contains(link.After)).ToValueList(), []);
        if (Projection.Of(car, only, now) is not { IsGood: true } made
            || new FirstScheduler().Solve(new(made.Value.Project), _each, null, cancel).Schedule is not { } schedule)
            return null;
        var begin = made.Value.Tasks.Select((task, i) => (task, Start: schedule.Starts[i]))
            .Where(one => one.task.At is not null && one.task.Kind != TaskKind.Move && visit.Contains(one.task)).Min(one => one.Start);
        var hands = WorkTime.Of(made.Value.Project, [Projection.You])?.Worked(begin) ?? begin;
        return new(MoveTask.For(move.Id), new(Math.Max(0, hands - move.Takes.Value)));
    }

    /// <summary>What is done at the place in one go.</summary>
    private static List<WorkTask> Visit(TaskNetwork network, WorkTask move)
    {
        var after = network.Links.ToLookup(link => link.Before, link => link.After);
        return network.Tasks.Where(task => task.Kind != TaskKind.Move && task.At == move.At && after[move.Id].Contains(task.Id)).ToList();
    }
}
