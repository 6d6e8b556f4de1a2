using NodaTime;
using Refettle.Access;
using Refettle.Stuck;
using Refettle.Timeline.Network;

namespace Refettle.Timeline;

/// <summary>A car with the plan for its jobs and goals, and the tasks that follow.</summary>
/// <param name="Network">Null when no plan reaches the goals; the plan tells why.</param>
public sealed record TimelineWork(Car Car, Plan Plan, TaskNetwork? Network)
{
    private static readonly Fault _onlyBack = new("timeline",
        "no job is chosen and no goal is named, so it only puts together what is apart and checks it",
        "Choose jobs, refettle scope --keep or refettle choose JOB, or name goals: refettle timeline 'free(rear-axle)'.")
    {
        Severity = Severity.Note,
    };

    /// <summary>What is tried at stuck joints.</summary>
    public LadderSet Ladders { get; init; } = new([]);

    /// <summary>How what the work takes stands; null while the shelf was not asked.</summary>
    public PartsAhead? Parts { get; init; }

    /// <summary>The tasks once the shelf was asked.</summary>
    public TimelineWork With(PartsAhead parts) =>
        Network is null ? this : this with { Network = Derived(Car, Plan, Ladders, parts), Parts = parts };

    /// <summary>Where the car cannot leave for another place yet, the time is used for what leaves it
    /// rolling: as far as that ends sooner.</summary>
    public TimelineWork Filled(Instant now, CancellationToken cancel = default)
    {
        if (Network is null || MoveTimes.Of(Car, Network, now, cancel) is not { Count: > 0 } moves)
            return this;
        var filled = this with { Network = Derived(Car, Plan, Ladders, Parts, moves) };
        return MoveTimes.End(Car, filled.Network, now, cancel) < MoveTimes.End(Car, Network, now, cancel) ? filled : this;
    }

    /// <summary>No job is chosen, no goal is named, the owner has no task of his own, nothing is apart and nothing left to
    /// check: there is no timeline to make.</summary>
    public static bool HasNothing(Car car, ValueList<Fact> further) =>
        IsUnasked(car, further) && (car.Disturbed.Count == 0 || Derived(car, Plan.Nothing, new([]), null).Tasks.Count == 0);

    private static bool IsUnasked(Car car, ValueList<Fact> further) =>
        further.Count == 0 && car.Calendar.Tasks.Count == 0 && ChosenJobs.Of(car).Count == 0;

    /// <param name="further">Goals beside those of the chosen jobs.</param>
    /// <returns>Faults when there is nothing to do, or the goals cannot be asked of this car.</returns>
    public static Result<TimelineWork> Of(
        Car car, ValueList<Fact> further, LadderSet ladders, IAccessPlanner planner, CancellationToken cancel = default)
    {
        var jobs = ChosenJobs.Of(car);
        var question = new Question { Goals = ChosenJobs.Goals(jobs, further) };
        if (HasNothing(car, further))
            return Result<TimelineWork>.Bad(new Fault("timeline", "no job is chosen and no goal is named",
                "Choose jobs, refettle scope --keep or refettle choose JOB, or name goals: refettle timeline 'free(rear-axle)'."));
        var faults = question.Goals.Count == 0 ? [] : QuestionCheck.Of(car, question);
        if (faults.Any(fault => fault.Severity == Severity.Error))
            return Result<TimelineWork>.Bad(faults);
        var plan = question.Goals.Count == 0 ? Plan.Nothing : planner.Reach(car, question, cancel);
        return Result<TimelineWork>.Good(new(car, plan, plan.Status == PlanStatus.Impossible ? null : Derived(car, plan, ladders, null))
        { Ladders = ladders });
    }

    /// <summary>The tasks, or the fault that no plan reaches the goals.</summary>
    public Result<TaskNetwork> Tasks() => Network is { } network ? Result<TaskNetwork>.Good(network)
        : Result<TaskNetwork>.Bad(new Fault("goals", "no plan reaches them", "The plan page tells what is in the way."));

    private static TaskNetwork Derived(Car car, Plan plan, LadderSet ladders, PartsAhead? parts, ValueList<MoveDue>? moves = null)
    {
        var network = NetworkPlanner.Of(new()
        { Car = car, Plan = plan, Jobs = ChosenJobs.Of(car), Ladders = ladders, Parts = parts, Moves = moves ?? [] });
        return IsUnasked(car, plan.Question.Goals) ? network with { Notes = [.. network.Notes, _onlyBack] } : network;
    }

    /// <summary>The question when all of it is done.</summary>
    /// <exception cref="InvalidOperationException">No plan reaches the goals.</exception>
    public TimelineQuestion Ask(Instant now) =>
        new() { Car = Car, Network = Network ?? throw new InvalidOperationException("No plan reaches the goals."), Plan = Plan, Now = now };
}
