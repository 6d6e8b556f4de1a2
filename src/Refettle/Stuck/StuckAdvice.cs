using Refettle.Access;

namespace Refettle.Stuck;

/// <summary>What to do about a joint that will not open.</summary>
public sealed record StuckAnswer
{
    public required string Joint { get; init; }

    public JointCondition Condition { get; init; }

    /// <summary>The chances of seizure levels 0 (by hand) to 4 (solid) before any try was logged, by exposure alone.</summary>
    public required ValueList<double> Before { get; init; }

    /// <summary>The same after all tries on this car.</summary>
    public required ValueList<double> Now { get; init; }

    /// <summary>The best try that may be done now; null when every gate is closed, or the joint is free.</summary>
    public NextTryAnswer? Next { get; init; }

    /// <summary>What would be tried next were all gates open; null when that is <see cref="Next"/> or there is none.</summary>
    public Rung? Better { get; init; }

    /// <summary>Tries that may not be done now, each with what closes its gate.</summary>
    public ValueList<ClosedTry> Closed { get; init; } = [];

    /// <summary>The clock of a soak that runs, or has run out and waits for the next try; null when none does.</summary>
    public SoakClock? Soak { get; init; }

    /// <summary>Tries for which the owner gave leave although what they destroy is not in hand.</summary>
    public ValueList<LeaveForMissing> Leave { get; init; } = [];

    /// <summary>Where minutes and chances come from.</summary>
    public required string Origin { get; init; }
}

/// <summary>A try behind a closed gate.</summary>
public sealed record ClosedTry(Rung Rung, ValueList<ClosedBy> Reasons);

/// <summary>Advises on one stuck joint of a car as it stands.</summary>
public static class StuckAdvice
{
    /// <param name="car">The car, with its logged tries.</param>
    /// <param name="joint">A joint of it.</param>
    /// <param name="ladders">A set without faults that has ladders for the joint's kind.</param>
    /// <param name="atHand">What is ready.</param>
    /// <exception cref="KeyNotFoundException">The car has no such joint.</exception>
    /// <param name="now">The time, for soaks and for tools that are not always there; null leaves both out of account.</param>
    public static StuckAnswer Of(Car car, string joint, LadderSet ladders, AtHand atHand, DateTimeOffset? now = null)
    {
        var standing = new CarStanding(car);
        var subject = standing.Joints[joint];
        var sofar = TriesSoFar.Of(car, subject, ladders);
        var clock = SoakClock.All(car, ladders).FirstOrDefault(one => one.Joint == joint);
        if (clock is not null)
            sofar = sofar with { Held = [.. sofar.Held, clock.Rung], IsSoaked = sofar.IsSoaked || (now is { } at && clock.IsReady(at)) };
        var answer = new StuckAnswer
        {
            Joint = joint,
            Condition = sofar.Condition,
            Before = CarBelief.Of(standing, ladders, []).Joint(joint).ToValueList(),
            Now = CarBelief.Of(standing, ladders, car.Tries).Joint(joint).ToValueList(),
            Soak = clock,
            Leave = car.LeaveForMissing.Where(leave => leave.Joint == joint).ToValueList(),
            Origin = "",
        };
        answer = answer with { Origin = ladders.For(subject.Kind).GetValueOrDefault(answer.Condition)?.Origin ?? "" };
        return answer.Condition == JointCondition.Freed ? answer : WithNext(answer, standing, subject, sofar, ladders, atHand, now);
    }

    private static StuckAnswer WithNext(
        StuckAnswer answer, CarStanding standing, Joint joint, TriesSoFar sofar, LadderSet ladders, AtHand atHand, DateTimeOffset? now)
    {
        var rungs = ladders.For(joint.Kind);
        var closed = rungs.Values.SelectMany(ladder => ladder.Rungs).DistinctBy(rung => rung.Id)
            .Select(rung => new ClosedTry(rung, [.. Gate.Of(standing, joint, rung, atHand), .. ToolHire.NotHere(standing.Car, rung, now)]))
            .Where(gate => gate.Reasons.Count > 0).ToValueList();
        var question = new NextTryQuestion
        {
            Ladders = rungs,
            Condition = answer.Condition,
            Belief = [.. answer.Now],
            Tried = sofar.Held,
            IsSoaked = sofar.IsSoaked,
            PerHour = standing.Car.Settings.PerHour,
        };
        var all = TryPlanner.Best(question);
        var best = all.Options.FirstOrDefault(option => closed.All(gate => gate.Rung.Id != option.Rung.Id));
        var onLadder = rungs[answer.Condition].Rungs;
        return answer with
        {
            Next = best is null
                ? null
                : all with { Best = best.Rung, ExpectedMinutes = best.ExpectedMinutes, Options = Open(all.Options, closed), IfHeld = [] },
            Better = all.Best == best?.Rung ? null : all.Best,
            Closed = closed.Where(gate => onLadder.Contains(gate.Rung)).ToValueList(),
        };
    }

    private static ValueList<TryOption> Open(ValueList<TryOption> options, ValueList<ClosedTry> closed) =>
        options.Where(option => closed.All(gate => gate.Rung.Id != option.Rung.Id)).ToValueList();
}
