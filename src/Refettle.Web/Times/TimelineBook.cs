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
public sealed class TimelineBook(ServerApi server, Storeroom store, TimeProvider clock)
{
    private const long NodesOnDevice = 300;

    private static ScheduleLimits AtOnce => new(TimeSpan.FromSeconds(2));

    private Basis? _of;
    private (Car Car, ValueList<Fact> Goals, double Seconds)? _wanted;

    /// <summary>All that a timeline follows from.</summary>
    private sealed record Basis(Car Car, Refettle.Stock.Shelf Shelf, DateOnly Today, ValueList<Fact> Goals);

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
    public string? Car => Shown is null ? null : _of?.Car.Id;

    /// <summary>What is shown was made for the car and the shelf as they now stand, and today.</summary>
    public bool IsFor(Car car, ValueList<Fact> goals) => _of == BasisOf(car, goals);

    /// <param name="seconds">To look for a better order; 0 for the first.</param>
    /// <remarks>What is wanted while another answer is on its way is asked for once that is here.</remarks>
    public async Task AskAsync(Car car, ValueList<Fact> goals, double seconds)
    {
        _wanted = (car, goals, seconds);
        while (!Asking && _wanted is { } wanted)
        {
            _wanted = null;
            await AskNowAsync(wanted.Car, wanted.Goals, wanted.Seconds);
        }
    }

    /// <summary>The timeline if a task began then: at once, without the server. Faults when that does not work.</summary>
    public Result<TimelineShown> Try(Car car, string task, LocalDateTime start)
    {
        var network = Shown!.Network with
        { Tasks = Shown.Network.Tasks.Select(one => one.Id == task ? one with { FixedStart = start } : one).ToValueList() };
        var answer = new TimelinePlanner(new FirstScheduler()).Moved(Asked(car, Shown.Plan, network), AtOnce);
        if (!answer.IsGood)
            return Result<TimelineShown>.Bad(answer.Faults);
        var isPast = WallClock.Of(car.Calendar, clock.GetCurrentInstant()).Minute(start) < 0;
        return !isPast && answer.Value.Tasks.Count > 0
            && !answer.Value.Tasks.Any(one => one.Task.Latest < one.Finish && IsInTime(one.Task.Id))
            ? Result<TimelineShown>.Good(new(Shown.Plan, network, answer.Value))
            : Result<TimelineShown>.Bad(new Fault(Said(task),
                $"it cannot begin {DayWords.Moment(start)}: {MoveRefusal.Why(Asked(car, Shown.Plan, Freed(task)), task, start)}",
                "Move that first, or choose another time."));
    }

    private async Task AskNowAsync(Car car, ValueList<Fact> goals, double seconds)
    {
        (Faults, IsIdle) = ([], TimelineWork.HasNothing(car, goals));
        Shown = IsIdle || _of?.Car.Id != car.Id ? null : Shown;
        _of = BasisOf(car, goals);
        if (IsIdle)
            return;

        Asking = true;
        var reply = await server.TimelineAsync(car.Id, new(goals, seconds));
        if (!reply.Reached)
        {
            await Task.Delay(50);
            await store.OpenAsync();
            _of = BasisOf(car, goals);
        }

        var result = reply.Reached ? reply.Result : Here(car, goals);
        (Asking, OnDevice, Faults) = (false, !reply.Reached, result.Faults);
        Shown = result.IsGood ? result.Value : null;
    }

    /// <summary>Which bag a part lies in takes no time.</summary>
    private Basis BasisOf(Car car, ValueList<Fact> goals) => new(car with { Bags = [] }, store.Shelf, store.Today, goals);

    private bool IsInTime(string task) => Shown!.Answer.Tasks.Any(one => one.Task.Id == task && one.Finish <= one.Task.Latest);

    private string Said(string task) => Shown!.Network.Tasks.FirstOrDefault(one => one.Id == task)?.Says ?? task;

    private TaskNetwork Freed(string task) =>
        Shown!.Network with
        { Tasks = Shown.Network.Tasks.Select(one => one.Id == task ? one with { FixedStart = null } : one).ToValueList() };

    private TimelineQuestion Asked(Car car, Plan plan, TaskNetwork network) =>
        new() { Car = car, Network = network, Plan = plan, Now = clock.GetCurrentInstant() };

    private Result<TimelineShown> Here(Car car, ValueList<Fact> goals)
    {
        var work = TimelineWork.Of(car, goals, new LadderSet([]), new AccessPlanner(new ReducedSolver(mostNodes: NodesOnDevice)));
        if (!work.IsGood)
            return Result<TimelineShown>.Bad(work.Faults);
        var supplied = Supplied(work.Value);
        var tasks = supplied.Tasks();
        if (!tasks.IsGood)
            return Result<TimelineShown>.Bad(tasks.Faults);
        var answer = Planned(car, supplied.Plan, tasks.Value);
        return answer.IsGood
            ? Result<TimelineShown>.Good(new(supplied.Plan, tasks.Value, answer.Value))
            : Result<TimelineShown>.Bad(answer.Faults);
    }

    /// <summary>Waiting for what is not on the shelf, as far as the cars' logs are here.</summary>
    private TimelineWork Supplied(TimelineWork work)
    {
        var cars = store.Plans
            .Select(one => one.History.Car.Id == work.Car.Id ? new(one.History, work, []) : PlannedCar.Of(one.History, one.Plan))
            .ToValueList();
        var own = cars.TakeWhile(car => car.History.Car.Id != work.Car.Id).Count();
        return own == cars.Count ? work : ShelfPlanner.Of(store.Shelf, cars, clock.GetCurrentInstant(), store.Today).Works[own];
    }

    private Result<TimelineAnswer> Planned(Car car, Plan plan, TaskNetwork network) => new TimelinePlanner(new FirstScheduler())
        .Of(Asked(car, plan, network), AtOnce);
}
