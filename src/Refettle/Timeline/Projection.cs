using NodaTime;
using Refettle.Timeline.Network;
using Refettle.Timeline.Spells;

namespace Refettle.Timeline;

/// <summary>Tasks as a project of whole minutes: activity i is task i.</summary>
public sealed record Projection(Project Project, ValueList<WorkTask> Tasks, WallClock Clock, LocalDate? LastEntered, ValueList<Fault> Notes)
{
    /// <summary>The resource that is the owner's own hands.</summary>
    public const int You = 0;

    private const int LeastDays = 365;

    private const int DaysBeyondDate = 120;

    /// <returns>A fault when nobody has said when there is time.</returns>
    public static Result<Projection> Of(Car car, TaskNetwork network, Instant now)
    {
        var own = car.Calendar.Spells.Where(spell => spell.Whose is null).ToList();
        var clock = WallClock.Of(car.Calendar, now);
        if (network.Tasks.Any(task => !task.IsWait) && own.Count == 0)
            return Result<Projection>.Bad(new Fault("spells", "nobody has said when there is time",
                "Say when you are in the garage: refettle spell add evenings --from 18:30 --until 21:30 --on tue thu."));
        var horizon = Horizon(car, clock);
        var (spells, last) = SpellsToCome.Until(own, horizon);
        var resources = new ResourceBook(car.Calendar, clock, horizon, spells);
        var uses = network.Tasks.Select(resources.Of).ToList();
        var activities = network.Tasks.Select((task, i) => ActivityOf(task, uses[i], resources, clock)).ToValueList();
        var place = network.Tasks.Select((task, i) => (task.Id, i)).ToDictionary(pair => pair.Id, pair => pair.i);
        var lags = network.Links.Select(link => new Lag(place[link.Before], place[link.After], link.Least, link.Most)).ToValueList();
        return Result<Projection>.Good(new(new(activities, resources.All, lags), network.Tasks, clock, last, resources.Notes));
    }

    /// <summary>Without the days that others set, for where they cannot be kept.</summary>
    public Project Unpressed =>
        Project with { Activities = Project.Activities.Select(activity => activity with { LatestFinish = null }).ToValueList() };

    /// <summary>The date to meet, at the handover's hour, or by the end of the day.</summary>
    public static LocalDateTime? Date(Car car) => car.Calendar.Handover?.By
        ?? (car.Due() is { } day ? LocalDate.FromDateOnly(day).PlusDays(1).AtMidnight() : null);

    private static LocalDate Horizon(Car car, WallClock clock)
    {
        var (least, date) = (clock.Today.PlusDays(LeastDays), Date(car)?.Date.PlusDays(DaysBeyondDate));
        return date > least && date < clock.Today.PlusDays(10 * LeastDays) ? date.Value : least;
    }

    /// <summary>What is on its way already runs from now until the day that is counted on; a forecast may draw another.</summary>
    private static Activity ActivityOf(WorkTask task, IReadOnlyCollection<int> uses, ResourceBook resources, WallClock clock)
    {
        if (task is { Delivery.On: not null, Mark: { Progress: TaskProgress.Begun } begun })
            return new(task.Id, Math.Max(0, clock.Minute(begun.At) + (int)Math.Ceiling(task.Takes.Value)),
                Enumerable.Repeat(0, resources.All.Count).ToValueList(), FixedStart: 0);
        var minutes = (int)Math.Ceiling(task.Takes.Value);
        var demands = Enumerable.Range(0, resources.All.Count).Select(resource => uses.Contains(resource) ? 1 : 0).ToValueList();
        var start = task.FixedStart is { } settled && clock.Minute(settled) is var minute && minute >= 0 ? minute : (int?)null;
        return new(task.Id, minutes, demands, task.IsWait ? Pace.WallClock : task.Pace,
            LatestFinish: task.Latest is { } latest ? clock.Minute(latest) : null, FixedStart: start,
            Done: Done(task, minutes, resources, clock));
    }

    /// <summary>What is begun is taken to need its whole time from now on, a wait its time from its begin.</summary>
    private static Window? Done(WorkTask task, int minutes, ResourceBook resources, WallClock clock)
    {
        if (task.Mark is not { } mark)
            return null;
        var at = Math.Min(0, clock.Minute(mark.At));
        return mark.Progress == TaskProgress.Done ? new(at - minutes, at)
            : new(at, task.IsWait ? Math.Max(0, at + minutes) : Math.Max(0, resources.EndOfWork(minutes)));
    }
}
