using Refettle.Access;

namespace Refettle.Timeline.Network;

/// <summary>An order of tasks with few moves of the car: as much as can be is done at one place before it
/// moves on. In it no more is done before the car leaves than what it leaves for needs, so that it is as whole then as can be; where it
/// cannot leave yet the time is used.</summary>
/// <param name="start">The place that the car is at; null for where it usually stands.</param>
/// <param name="isBound">Whether a task asks where the car is.</param>
/// <param name="dues">When the car can leave at the earliest, where that is known.</param>
internal sealed class VisitOrder(
    NetworkDraft draft, CarStanding standing, string? start, Predicate<WorkTask> isBound, ValueList<MoveDue> dues)
{
    /// <summary>What is done in one go away from the usual place, and all that has to be done before.</summary>
    private sealed record Visit(HashSet<string> Tasks, HashSet<string> Needs);

    public List<WorkTask> Of() => Run(Visits(Run([])));

    private List<Visit> Visits(List<WorkTask> order)
    {
        var visits = new List<Visit>();
        string? last = null;
        foreach (var task in order.Where(task => isBound(task)))
        {
            if (task.At is not null && task.At != last)
                visits.Add(new([], []));
            if (task.At is not null)
            {
                visits[^1].Tasks.Add(task.Id);
                visits[^1].Needs.UnionWith(draft.Before(task.Id));
            }

            last = task.At;
        }

        return visits;
    }

    /// <summary>Each after those it waits for. Of those that could be next first what needs no other place, then what is
    /// done where the car usually stands.</summary>
    private List<WorkTask> Run(List<Visit> visits)
    {
        var open = draft.Tasks.ToDictionary(task => task.Id, task => draft.DirectlyBefore(task.Id).Count);
        var ready = draft.Tasks.Where(task => open[task.Id] == 0).ToList();
        var order = new List<WorkTask>();
        var (at, meantime) = (start, new Meantime(draft, standing, dues));
        while (ready.Count > 0)
        {
            var visit = visits.Find(one => one.Tasks.Count > 0);
            var next = ready.Find(task => !isBound(task)) ?? ready.Find(task => task.At == at && IsDue(task, visit))
                ?? ready.Find(task => task.At is null && IsDue(task, visit))
                ?? ready.Find(task => at is null && task.At is null && visit is not null && meantime.Takes(task, visit.Tasks, visit.Needs))
                    ?? ready.Find(task => task.At is not null && visit?.Tasks.Contains(task.Id) != false) ?? ready[0];
            ready.Remove(next);
            order.Add(next);
            visit?.Tasks.Remove(next.Id);
            meantime.Pass(next, isBound(next) || visit?.Needs.Contains(next.Id) == true);
            at = isBound(next) ? next.At : at;
            ready.AddRange(draft.DirectlyAfter(next.Id).Where(id => --open[id] == 0).Select(id => draft[id]));
        }

        return order;
    }

    private static bool IsDue(WorkTask task, Visit? visit) =>
        visit is null || visit.Tasks.Contains(task.Id) || visit.Needs.Contains(task.Id);
}
