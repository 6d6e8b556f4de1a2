using Refettle.Access;
using Refettle.Stuck;

namespace Refettle.Judging;

/// <summary>What all verdicts of one question need to know.</summary>
internal sealed class Workbench
{
    private readonly IAccessPlanner _planner;
    private readonly VerdictQuestion _question;
    private readonly CancellationToken _cancel;
    // What holds more than this is hardly judged by its joints.
    private const int MostJoints = 12;

    private readonly Lazy<CarStanding> _after;
    private readonly Dictionary<string, List<(Joint Joint, TryOption Next)>> _nextTries = [];

    public Workbench(Car car, VerdictQuestion question, IAccessPlanner planner, CancellationToken cancel)
    {
        (Car, _question, _planner, _cancel) = (car, question, planner, cancel);
        Standing = new(car);
        _after = new(() => question.Planned.Count == 0
            ? Standing
            : new(AfterPlan.Of(car, planner.Reach(car, new() { Goals = question.Planned }, cancel))));
    }

    public Car Car { get; }

    public CarStanding Standing { get; }

    public decimal? DaysLeft => _question.DaysLeft;

    public PartEstimate Estimate(Part part) =>
        Car.Estimates.FirstOrDefault(estimate => estimate.Part == part.Id)
        ?? new(part.Id, null, null, null, null, null, null, null, null, null);

    /// <summary>Minutes to get the part off and back on, on top of what is planned; null when it cannot come off.</summary>
    public Minutes? Access(Part part)
    {
        if (part.Fixed)
            return null;
        var fact = Fact.Off(part.Id);
        if (ComesOff(part))
            return Minutes.Zero;
        var plan = _planner.Reach(_after.Value.Car, new() { Goals = [fact] }, _cancel);
        return plan.Status == PlanStatus.Impossible ? null : plan.Cost.Open + plan.Cost.Close + plan.Cost.Destroyed;
    }

    /// <summary>Whether it is off, or comes off with what is planned.</summary>
    public bool ComesOff(Part part) => _after.Value.IsTrue(Fact.Off(part.Id));

    /// <summary>Minutes that an amount is worth at the owner's rate.</summary>
    public Minutes Worth(Money money) => new(Math.Min(Minutes.Max, money.Amount / Car.Settings.PerHour.Amount * 60));

    /// <summary>The same part on the other side; null when it has none.</summary>
    public Part? OtherSide(Part part) => Spots.MirrorOf(part.Id) is var id && id != part.Id ? Standing.Parts.GetValueOrDefault(id) : null;

    /// <summary>The chance that a try at one of its joints makes a mess of that joint, by the next try of
    /// each; null when nothing is known.</summary>
    public double? Harm(Part part)
    {
        var tries = NextTries(part);
        return tries.Count == 0 ? null : 1 - tries.Aggregate(1.0, (product, one) => product * (1 - one.Next.Harms));
    }

    /// <summary>Minutes to expect of tries at its joints beyond their opening, what may break on the way
    /// included; 0 where it comes off anyway.</summary>
    public Minutes Tries(Part part) => ComesOff(part) ? Minutes.Zero : new(Math.Min(Minutes.Max, NextTries(part)
        .Sum(one => Math.Max(0,
            Math.Round((decimal)Math.Min(one.Next.ExpectedMinutes, (double)Minutes.Max), 1) - one.Joint.Ways.Select(way => way.Open.Value)
                .DefaultIfEmpty().Min()))));

    /// <summary>The next try of each of its closed joints, by the ladders.</summary>
    private List<(Joint Joint, TryOption Next)> NextTries(Part part)
    {
        if (_question.Ladders is not { } ladders || Standing.IsTrue(Fact.Off(part.Id)))
            return [];
        if (_nextTries.TryGetValue(part.Id, out var known))
            return known;
        var closed = Standing.JointsOf(part.Id)
            .Where(joint => !Standing.IsTrue(Fact.Open(joint.Id)) && ladders.For(joint.Kind).ContainsKey(JointCondition.Sound))
            .Take(MostJoints);
        return _nextTries[part.Id] = [.. closed.Select(joint => (joint,
            next: StuckAdvice.Of(Car, joint.Id, ladders, new([], [AtHand.All])).Next?.Options[0])).Where(one => one.next is not null)
            .Select(one => (one.joint, one.next!))];
    }

    public IEnumerable<string> Notes(Part part, Condition condition)
    {
        var craft = Craft.Of(part);
        if (craft.InPairs && OtherSide(part) is { } other)
            yield return $"{other.Name}: done together as a pair by many, by some makers the bad one alone; the sums count both where it is renewed.";
        if (Estimate(part).SoldWith is { } with)
            yield return $"Sold only with {(Standing.Parts.TryGetValue(with, out var bought) ? bought.Name : with)}.";
        if (Harm(part) is { } harm and > 0.005)
            yield return $"{harm:0%} that a joint of it is damaged by its next try (chances of the ladders: common practice, no source).";
        if (condition.Worst is null)
            yield return "Nothing was found of it yet: look first.";
        if (condition.Measured.Any(measured => measured.Decision is null))
            yield return "A reading decides nothing yet: see what is missing.";
        if (Car.Unsound.Contains(part.Id))
            yield return "Too weak to carry the car: no stance may rest on it.";
    }
}
