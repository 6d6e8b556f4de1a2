using NodaTime;
using Refettle.Timeline.Network;
using Refettle.Timeline.Scheduling;
using Refettle.Timeline.Spells;

namespace Refettle.Timeline;

/// <summary>Puts a schedule of minutes back into tasks, days and words.</summary>
internal sealed class TimelineView(TimelineQuestion question, Projection projection)
{
    private readonly WallClock _clock = projection.Clock;

    public TimelineAnswer Of(ScheduleAnswer answer)
    {
        var shown = new TimelineAnswer
        {
            Begin = _clock.At(0),
            TimeZone = _clock.Zone.Id,
            Status = answer.Status,
            Bound = answer.Bound > 0 && answer.Bound < WorkTime.Never ? _clock.At(answer.Bound) : null,
            Date = Projection.Date(question.Car),
            LastEntered = projection.LastEntered,
            Notes = [.. projection.Notes.Distinct(), .. question.Network.Notes],
        };
        return answer.Schedule is { } schedule ? With(shown, schedule) : shown with { Clashes = Words(answer.Clash) };
    }

    /// <summary>Each condition as its owner would say it.</summary>
    public ValueList<string> Words(ValueList<Condition> clash) => clash.Select(condition => condition.Kind switch
    {
        ConditionKind.FixedStart =>
            $"\"{projection.Tasks[condition.Index].Says}\" is to start {DayWords.Moment(_clock.At(projection.Project.Activities[condition.Index].FixedStart ?? 0))}",
        ConditionKind.LatestFinish when projection.Tasks[condition.Index].Latest is { } latest =>
            $"\"{projection.Tasks[condition.Index].Says}\" is to be done by {DayWords.Moment(latest)}",
        ConditionKind.LatestFinish =>
            $"\"{projection.Tasks[condition.Index].Says}\" is to be done by {DayWords.Moment(Projection.Date(question.Car) ?? _clock.At(0))}, the date to meet",
        _ => Lag(projection.Project.Lags[condition.Index]),
    }).ToValueList();

    private string Lag(Lag lag) =>
        $"\"{projection.Tasks[lag.After].Says}\" is to begin at most {new Minutes(lag.Most ?? 0)} after \"{projection.Tasks[lag.Before].Says}\"";

    private TimelineAnswer With(TimelineAnswer shown, Schedule schedule)
    {
        var chain = CriticalChain.Of(projection.Project, schedule);
        var order = Enumerable.Range(0, projection.Tasks.Count).OrderBy(i => schedule.Starts[i]).ThenBy(i => schedule.Finishes[i])
            .ThenBy(i => i).ToList();
        var tasks = order.Select(i => Planned(i, schedule, chain.Contains(i))).ToValueList();
        var faults = ScheduleCheck.Of(projection.Project, schedule)
            .Concat(NetworkCheck.Of(question.Car, question.Plan.Question, order.Select(i => projection.Tasks[i]).ToList()));
        return shown with
        {
            Tasks = tasks,
            Finish = _clock.At(Math.Max(0, schedule.Makespan)),
            Spells = Spells(schedule.Makespan),
            Changes = Changes(tasks),
            Notes = [.. shown.Notes, .. AwayNotes.Of(projection, schedule), .. faults],
        };
    }

    private PlannedTask Planned(int i, Schedule schedule, bool isCritical)
    {
        var (start, finish) = (schedule.Starts[i], schedule.Finishes[i]);
        var activity = projection.Project.Activities[i];
        var open = activity.Pace == Pace.WallClock || activity.Done is not null ? null
            : WorkTime.Of(projection.Project,
                Enumerable.Range(0, activity.Demands.Count).Where(resource => activity.Demands[resource] > 0));
        var pieces = open is null ? [new Window(start, finish)]
            : Enumerable.Range(0, open.Count)
                .Select(window => new Window(Math.Max(start, open[window].Start), Math.Min(finish, open[window].End)))
                .Where(window => window.Start < window.End);
        return new(projection.Tasks[i], _clock.At(start), _clock.At(finish), isCritical, pieces.Select(Shown).ToValueList());
    }

    private ValueList<PlannedWindow> Spells(int until) => (projection.Project.Resources[Projection.You].Open ?? [])
        .TakeWhile(window => window.Start <= until).Select(Shown).ToValueList();

    private PlannedWindow Shown(Window window) => new(_clock.At(window.Start), _clock.At(window.End));

    private ValueList<TaskChange> Changes(ValueList<PlannedTask> tasks)
    {
        var was = question.Car.Calendar.Kept.ToDictionary(kept => kept.Task);
        var now = tasks.ToDictionary(task => task.Task.Id);
        if (was.Count == 0)
            return [];
        var moved = tasks.Where(task => !was.TryGetValue(task.Task.Id, out var kept) || kept.Start.Date != task.Start.Date)
            .Select(task => new TaskChange(task.Task.Id, task.Task.Says, was.GetValueOrDefault(task.Task.Id)?.Start, task.Start));
        return [.. moved,
            .. was.Values.Where(kept => !now.ContainsKey(kept.Task))
                .Select(kept => new TaskChange(kept.Task, kept.Task, kept.Start, null))];
    }
}
