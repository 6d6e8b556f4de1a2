using System.Collections.Frozen;
using Refettle.Access;
using Refettle.Logbook;

namespace Refettle.Stock.Baskets;

/// <summary>What a plan of a car uses up, with what was used up before and is not made good yet, and what its owner
/// asks for by a verdict or a word.</summary>
public static class PlanNeeds
{
    /// <param name="plan">The plan; joints that are open already are taken along.</param>
    /// <param name="parts">Further parts that are to be renewed, by identifier.</param>
    /// <param name="by">The day by which it must be in hand, where its step has none.</param>
    /// <param name="days">The days of the steps that take it, by thing.</param>
    /// <param name="tried">Places that tries may destroy: what goes there is in hand before.</param>
    /// <returns>Each place once.</returns>
    public static ValueList<Need> Of(
        CarHistory history, Shelf shelf, Plan plan, IEnumerable<string> parts, DateOnly? by,
        IReadOnlyDictionary<string, DateOnly>? days = null, IReadOnlySet<string>? tried = null)
    {
        var car = history.Car;
        var positions = car.Numbers.ToDictionary(number => number.Thing);
        var opened = plan.Steps.Select(step => step.Fact).Concat(car.Done).Where(fact => fact.Kind == FactKind.Open)
            .Select(fact => fact.Subject).ToHashSet();
        var destroyed = plan.Steps.SelectMany(step => step.Destroys).Concat(DestroyedBefore(history)).ToHashSet();
        var asked = car.Verdicts.Where(verdict => verdict.Kind is VerdictKind.Replace or VerdictKind.Substitute)
            .Select(verdict => verdict.Part).Concat(parts).ToHashSet();
        var renewed = destroyed.Union(asked).ToHashSet();
        tried ??= FrozenSet<string>.Empty;
        var needs = car.Structure.Parts.Where(part => renewed.Contains(part.Id))
            .Select(part => OfPart(car, shelf, part, positions, destroyed.Contains(part.Id), by))
            .Concat(car.Structure.Joints.Where(joint => opened.Contains(joint.Id) && !GoesWith(joint, renewed))
                .Select(joint => OfJoint(car, shelf, joint, positions, by)).OfType<Need>())
            .Concat(car.Structure.Parts.Where(part => tried.Contains($"part {part.Id}") && !renewed.Contains(part.Id))
                .Select(part => ForTry(OfPart(car, shelf, part, positions, destroyed: true, by), null)))
            .Concat(car.Structure.Joints.Where(joint => tried.Contains($"joint {joint.Id}") && !joint.SingleUse)
                .Select(joint => ForTry(Pieces(car, joint, positions, by), OfJoint(car, shelf, joint, positions, by))))
            .Concat(car.Wants.Select(want => OfWant(car, want, positions, by)));
        return needs.Where(need => need.Count > 0).GroupBy(need => need.Thing)
            .Select(place => place.OrderByDescending(need => need.Count).ThenBy(need => need.Reason == NeedReason.MayBreak).First())
            .Select(need => need with { By = days?.TryGetValue(need.Thing, out var day) == true ? day : need.By, Currency = car.Currency })
            .OrderBy(need => need.Thing, StringComparer.Ordinal).ToValueList();
    }

    /// <summary>Parts that a way destroyed when it was done, while they are still off.</summary>
    private static IEnumerable<string> DestroyedBefore(CarHistory history)
    {
        var ways = history.Car.Structure.Joints.ToDictionary(joint => joint.Id, joint => joint.Ways);
        return history.Lines.Where(line => line.Standing == Standing.InForce).Select(line => line.Happening).OfType<StepDone>()
            .Where(done => done.Fact.Kind == FactKind.Open && ways.ContainsKey(done.Fact.Subject))
            .SelectMany(done => ways[done.Fact.Subject].Where(way => way.Id == done.Way).SelectMany(way => way.Destroys))
            .Where(part => history.Car.Done.Contains(Fact.Off(part)));
    }

    /// <summary>What went onto the place from the shelf is there already.</summary>
    private static int Fitted(Car car, Shelf shelf, string thing) =>
        Math.Max(0, shelf.Accounts.Where(account => account.Place == StockPlace.On(car.Id, thing)).Sum(account => account.Count));

    private static Need OfPart(Car car, Shelf shelf, Part part, Dictionary<string, PositionNumber> positions, bool destroyed, DateOnly? by)
    {
        var position = positions.GetValueOrDefault($"part {part.Id}");
        return new(car.Id, $"part {part.Id}", position?.Number, part.Name,
            (position?.Count ?? part.Count) - Fitted(car, shelf, $"part {part.Id}"), by,
            destroyed ? NeedReason.Destroyed : NeedReason.Asked, part.Price,
            destroyed ? "the plan destroys it, or it was destroyed" : "to be renewed")
        { LeadDays = LeadDays(car, part) };
    }

    /// <summary>Whole days: what is short of one by an hour is not here before it.</summary>
    private static int? LeadDays(Car car, Part? part) =>
        car.Estimates.FirstOrDefault(estimate => estimate.Part == part?.Id)?.LeadDays is { } days ? (int)Math.Ceiling(days) : null;

    /// <summary>What was asked for by word is a count of pieces, and what went onto the place since is taken off it already.</summary>
    private static Need OfWant(Car car, Want want, Dictionary<string, PositionNumber> positions, DateOnly? by)
    {
        var part = car.Structure.Parts.FirstOrDefault(part => $"part {part.Id}" == want.Thing);
        var joint = car.Structure.Joints.FirstOrDefault(joint => $"joint {joint.Id}" == want.Thing);
        return new(car.Id, want.Thing, positions.GetValueOrDefault(want.Thing)?.Number, part?.Name ?? Name(joint!), want.Count, by,
            NeedReason.Asked, part?.Price, "asked for")
        { LeadDays = LeadDays(car, part) };
    }

    /// <summary>A gasket's own seat and bond are no pieces beside the gasket that is renewed.</summary>
    private static bool GoesWith(Joint joint, HashSet<string> renewed) =>
        joint.Kind is JointKind.Seal or JointKind.Bond or JointKind.Seat or JointKind.PressFit && joint.Holds.Any(renewed.Contains);

    private static Need? OfJoint(Car car, Shelf shelf, Joint joint, Dictionary<string, PositionNumber> positions, DateOnly? by)
    {
        var need = Pieces(car, joint, positions, by);
        if (joint.SingleUse)
            return joint.Kind is JointKind.Seal or JointKind.Bond
                ? need with { Reason = NeedReason.Seal, Says = "not fitted twice" }
                : need;
        var (spares, broken) = (Spares.For(shelf, joint, need.Number, need.Count, car), Math.Min(need.Count, Broken(car, joint)));
        if (broken > 0)
            return need with
            {
                Count = Math.Max(broken, spares.Count),
                Reason = NeedReason.Destroyed,
                Says = $"{(broken < spares.Count ? $"{broken} " : "")}broken or spoilt when it was tried{(broken < spares.Count ? ", the others spares" : "")}"
            };
        return spares.Count == 0 ? null : need with { Count = spares.Count, Reason = NeedReason.MayBreak, Says = spares.Says };
    }

    /// <summary>All that goes onto a joint.</summary>
    private static Need Pieces(Car car, Joint joint, Dictionary<string, PositionNumber> positions, DateOnly? by)
    {
        var position = positions.GetValueOrDefault($"joint {joint.Id}");
        return new(car.Id, $"joint {joint.Id}", position?.Number, Name(joint), position?.Count ?? joint.Count, by, NeedReason.SingleUse,
            null, "single-use: new ones each time");
    }

    /// <param name="usual">What the place asks for without the try: spares, or what broke before.</param>
    private static Need ForTry(Need need, Need? usual) =>
        need with
        {
            Count = Math.Max(need.Count, usual?.Count ?? 0),
            Reason = NeedReason.Destroyed,
            Says = "a try may destroy it: in hand before"
        };

    /// <summary>Pieces that a try rounded, broke, or left without a thread; one that got worse step by step is one piece.</summary>
    private static int Broken(Car car, Joint joint)
    {
        var broken = 0;
        var isSpoilt = false;
        foreach (var becomes in car.Tries.Where(attempt => attempt.Joint == joint.Id).Select(attempt => attempt.Becomes)
            .OfType<JointCondition>())
        {
            broken += becomes is not (JointCondition.Freed or JointCondition.TurnsWithSleeve) && !isSpoilt ? 1 : 0;
            isSpoilt |= becomes != JointCondition.TurnsWithSleeve;
            isSpoilt &= becomes != JointCondition.Freed;
        }

        return broken;
    }

    private static string Name(Joint joint) => string.Join(' ', new[]
    {
        joint.Name ?? Access.Wording.Word(joint.Kind), joint.Thread, joint.Grade is null ? null : $"class {joint.Grade}",
    }.Where(word => word is not null));
}
