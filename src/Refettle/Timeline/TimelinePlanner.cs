using NodaTime;
using Refettle.Timeline.Network;
using Refettle.Timeline.Scheduling;

namespace Refettle.Timeline;

/// <summary>Turns tasks into a timeline.</summary>
/// <param name="scheduler"><see cref="FirstScheduler"/> answers at once and works in a browser.</param>
public sealed class TimelinePlanner(IScheduler scheduler)
{
    private const int MinutesOfADay = 24 * 60;

    /// <param name="progress">Told of every better timeline.</param>
    /// <returns>A fault when there is nothing to schedule by: no spells. Without a timeline it says what is short.</returns>
    public Result<TimelineAnswer> Of(
        TimelineQuestion question, ScheduleLimits limits, IProgress<TimelineAnswer>? progress = null, CancellationToken cancel = default)
    {
        var made = Projection.Of(question.Car, question.Network, question.Now);
        return made.IsGood && Shown(question, made.Value, limits, progress, cancel) is var shown
            ? Result<TimelineAnswer>.Good(shown is { Tasks.Count: 0, Clashes.Count: 0 } && made.Value.Tasks.Count > 0
                ? shown with { Clashes = ShortDays.Of(made.Value, cancel) }
                : shown)
            : Result<TimelineAnswer>.Bad(made.Faults);
    }

    /// <summary>With a task moved: whether it works, at once. Why it does not <see cref="MoveRefusal"/> says.</summary>
    /// <returns>A fault when there is nothing to schedule by: no spells.</returns>
    public Result<TimelineAnswer> Moved(TimelineQuestion question, ScheduleLimits limits)
    {
        var made = Projection.Of(question.Car, question.Network, question.Now);
        return made.IsGood
            ? Result<TimelineAnswer>.Good(Shown(question, made.Value, limits, null, default))
            : Result<TimelineAnswer>.Bad(made.Faults);
    }

    private TimelineAnswer Shown(
        TimelineQuestion question, Projection made, ScheduleLimits limits, IProgress<TimelineAnswer>? progress, CancellationToken cancel)
    {
        var view = new TimelineView(question, made);
        var asked = new ScheduleQuestion(made.Project, Aims(question.Car, made), Known(question.Car.Calendar.Kept, made));
        var answer = scheduler.Solve(asked, limits, progress is null ? null : new Passing(progress, view), cancel);
        var shown = answer.Schedule is null && !cancel.IsCancellationRequested && made.Tasks.Any(task => task.Latest is not null)
            ? Unpressed(asked, new(question, made with { Project = made.Unpressed }), made.Unpressed, view.Words(answer.Clash), limits,
                cancel) : view.Of(answer);
        return shown.IsInTime == false && !cancel.IsCancellationRequested ? ForTheDate(asked, made, view, shown, limits, cancel) : shown;
    }

    /// <summary>What others set cannot be kept: the timeline is made without, and says what comes too late.</summary>
    private TimelineAnswer Unpressed(
        ScheduleQuestion asked, TimelineView view, Project unpressed, ValueList<string> clashes, ScheduleLimits limits,
        CancellationToken cancel)
    {
        var shown = view.Of(scheduler.Solve(asked with { Project = unpressed }, limits, null, cancel));
        return shown with
        {
            Clashes = [.. clashes,
                .. shown.Tasks.Where(task => task.Task.Latest < task.Finish)
                    .Select(task => $"\"{task.Task.Says}\" is done {DayWords.Moment(task.Finish)}, after {DayWords.Moment(task.Task.Latest!.Value)}")]
        };
    }

    /// <summary>Once more with the date as a condition: either it can be kept after all, or what clashes with it is told.</summary>
    private TimelineAnswer ForTheDate(
        ScheduleQuestion asked, Projection projection, TimelineView view, TimelineAnswer late, ScheduleLimits limits,
        CancellationToken cancel)
    {
        var date = projection.Clock.Minute(late.Date!.Value);
        var sinks = Enumerable.Range(0, projection.Tasks.Count).Except(projection.Project.Lags.Select(lag => lag.Before)).ToHashSet();
        var pressed = projection.Project.Activities
            .Select((activity, i) => sinks.Contains(i) && activity.Done is null
                ? activity with { LatestFinish = Math.Min(activity.LatestFinish ?? date, date) }
                : activity);
        var answer = scheduler.Solve(asked with { Project = projection.Project with { Activities = pressed.ToValueList() } }, limits, null,
            cancel);
        return answer.Schedule is not null ? view.Of(answer)
            : late with { Clashes = [.. late.Clashes, .. answer.Status == ScheduleStatus.Impossible ? view.Words(answer.Clash) : []] };
    }

    /// <summary>After the finish: what was kept stays on its day, then the car is moved little, then money goes out late.</summary>
    private static ValueList<Aim> Aims(Car car, Projection projection)
    {
        var aims = new List<Aim>();
        if (car.Calendar.Kept.Count > 0)
            aims.Add(AsKept(car.Calendar.Kept, projection));
        var stances = projection.Tasks.Select(task => task.Stance).OfType<string>().Distinct().ToList();
        aims.Add(new Aim.FewChanges(projection.Tasks.Select(task => task.Stance is null || task.IsWait ? -1 : stances.IndexOf(task.Stance))
            .ToValueList()));
        aims.Add(new Aim.LateStarts(projection.Tasks.Select(task => task.Kind == TaskKind.Order ? 1 : 0).ToValueList()));
        return aims.ToValueList();
    }

    /// <summary>The kept timeline to begin from, where it still tells of most tasks.</summary>
    private static Schedule? Known(ValueList<KeptTask> kept, Projection projection)
    {
        var was = kept.ToDictionary(one => one.Task,
            one => new Window(projection.Clock.Minute(one.Start), projection.Clock.Minute(one.Finish)));
        return projection.Tasks.Count(task => was.ContainsKey(task.Id)) * 2 <= projection.Tasks.Count ? null
            : new(projection.Tasks.Select(task => was.GetValueOrDefault(task.Id).Start).ToValueList(),
                projection.Tasks.Select(task => was.GetValueOrDefault(task.Id).End).ToValueList());
    }

    private static Aim.SameDays AsKept(ValueList<KeptTask> kept, Projection projection)
    {
        var was = kept.ToDictionary(one => one.Task, one => projection.Clock.Minute(one.Start));
        return new(
            projection.Tasks.Select(task => was.GetValueOrDefault(task.Id)).ToValueList(),
            projection.Tasks.Select(task => was.ContainsKey(task.Id) && !task.IsWait ? 1 : 0).ToValueList(),
            MinutesOfADay);
    }

    private sealed class Passing(IProgress<TimelineAnswer> progress, TimelineView view) : IProgress<ScheduleAnswer>
    {
        public void Report(ScheduleAnswer value) => progress.Report(view.Of(value));
    }
}
