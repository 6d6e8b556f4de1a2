using NodaTime;
using NodaTime.Extensions;
using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Stock.Baskets;
using Refettle.Stuck;
using Refettle.Timeline;
using Refettle.Timeline.Network;
using Refettle.Timeline.Scheduling;
using Refettle.Timeline.Spells;
using Refettle.Web.Garage;
using Refettle.Web.Stores;

namespace Refettle.Web.Times;

/// <summary>The timeline that the pages show: asked of the server, worked out here where it cannot be reached, and tried anew here while
/// something is moved.</summary>
public sealed class TimelineBook(ServerApi server, TimeProvider clock)
{
    private const long NodesOnDevice = 300;

    private static ScheduleLimits AtOnce => new(TimeSpan.FromSeconds(2));

    private (string Car, CarCalendar Calendar, ValueList<Fact> Done, ValueList<Disturbed> Disturbed, ValueList<Job> Chosen, ValueList<Fact> Goals)? _of;

    public TimelineShown? Shown { get; private set; }

    public bool Asking { get; private set; }

    /// <summary>It is asked for, or will be as soon as the car's log is here.</summary>
    public bool IsAwaited => Asking || (Shown is null && !IsIdle && Faults.Count == 0);

    /// <summary>It was worked out in this browser.</summary>
    public bool OnDevice { get; private set; }

    public ValueList<Fault> Faults { get; private set; } = [];

    /// <summary>Nothing was chosen to be done, so nothing was asked.</summary>
    public bool IsIdle { get; private set; }

    /// <summary>The car whose timeline is shown.</summary>
    public string? Car => Shown is null ? null : _of?.Car;

    /// <summary>What is shown was made for the car as it now stands.</summary>
    public bool IsFor(Car car, ValueList<Fact> goals) => _of is { } of && of == (car.Id, car.Calendar, car.Done, car.Disturbed, ChosenJobs.Of(car), goals);

    /// <param name="seconds">To look for a better order; 0 for the first.</param>
    /// <param name="store">The shelf, for where the timeline is worked out here; null leaves it unasked.</param>
    public async Task AskAsync(Car car, ValueList<Fact> goals, double seconds, Storeroom? store = null)
    {
        if (Asking)
            return;
        (Faults, _of, IsIdle) = ([], (car.Id, car.Calendar, car.Done, car.Disturbed, ChosenJobs.Of(car), goals), TimelineWork.HasNothing(car, goals));
        if (IsIdle)
        {
            Shown = null;
            return;
        }

        Asking = true;
        var reply = await server.TimelineAsync(car.Id, new(goals, seconds));
        if (!reply.Reached)
        {
            await Task.Delay(50);
            if (store is not null)
                await store.OpenAsync();
        }

        var result = reply.Reached ? reply.Result : Here(car, goals, store);
        (Asking, OnDevice, Faults) = (false, !reply.Reached, result.Faults);
        Shown = result.IsGood ? result.Value : null;
    }

    /// <summary>The timeline if a task began then: at once, without the server. Faults when that does not work.</summary>
    public Result<TimelineShown> Try(Car car, string task, LocalDateTime start)
    {
        var network = Shown!.Network with { Tasks = Shown.Network.Tasks.Select(one => one.Id == task ? one with { FixedStart = start } : one).ToValueList() };
        var answer = new TimelinePlanner(new FirstScheduler()).Moved(Asked(car, Shown.Plan, network), AtOnce);
        if (!answer.IsGood)
            return Result<TimelineShown>.Bad(answer.Faults);
        var isPast = WallClock.Of(car.Calendar, clock.GetCurrentInstant()).Minute(start) < 0;
        return !isPast && answer.Value.Tasks.Count > 0 && !answer.Value.Tasks.Any(one => one.Task.Latest < one.Finish && IsInTime(one.Task.Id))
            ? Result<TimelineShown>.Good(new(Shown.Plan, network, answer.Value))
            : Result<TimelineShown>.Bad(new Fault(Said(task), $"it cannot begin {DayWords.Moment(start)}: {MoveRefusal.Why(Asked(car, Shown.Plan, Freed(task)), task, start)}", "Move that first, or choose another time."));
    }

    private bool IsInTime(string task) => Shown!.Answer.Tasks.Any(one => one.Task.Id == task && one.Finish <= one.Task.Latest);

    private string Said(string task) => Shown!.Network.Tasks.FirstOrDefault(one => one.Id == task)?.Says ?? task;

    private TaskNetwork Freed(string task) => Shown!.Network with { Tasks = Shown.Network.Tasks.Select(one => one.Id == task ? one with { FixedStart = null } : one).ToValueList() };

    private TimelineQuestion Asked(Car car, Plan plan, TaskNetwork network) => new() { Car = car, Network = network, Plan = plan, Now = clock.GetCurrentInstant() };

    private Result<TimelineShown> Here(Car car, ValueList<Fact> goals, Storeroom? store)
    {
        var work = TimelineWork.Of(car, goals, new LadderSet([]), new AccessPlanner(new ReducedSolver(mostNodes: NodesOnDevice)));
        if (!work.IsGood)
            return Result<TimelineShown>.Bad(work.Faults);
        var supplied = store is null ? work.Value : Supplied(work.Value, store);
        var tasks = supplied.Tasks();
        if (!tasks.IsGood)
            return Result<TimelineShown>.Bad(tasks.Faults);
        var answer = Planned(car, supplied.Plan, tasks.Value);
        return answer.IsGood ? Result<TimelineShown>.Good(new(supplied.Plan, tasks.Value, answer.Value)) : Result<TimelineShown>.Bad(answer.Faults);
    }

    /// <summary>Waiting for what is not on the shelf, as far as the cars' logs are here.</summary>
    private TimelineWork Supplied(TimelineWork work, Storeroom store)
    {
        var cars = store.Plans.Select(one => one.History.Car.Id == work.Car.Id ? new(one.History, work, []) : PlannedCar.Of(one.History, one.Plan)).ToValueList();
        var own = cars.TakeWhile(car => car.History.Car.Id != work.Car.Id).Count();
        return own == cars.Count ? work : ShelfPlanner.Of(store.Shelf, cars, clock.GetCurrentInstant(), store.Today).Works[own];
    }

    private Result<TimelineAnswer> Planned(Car car, Plan plan, TaskNetwork network) => new TimelinePlanner(new FirstScheduler())
        .Of(Asked(car, plan, network), AtOnce);
}
