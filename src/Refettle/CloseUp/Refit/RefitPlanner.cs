using Refettle.Access;
using Refettle.Logbook;
using Refettle.Timeline.Network;

namespace Refettle.CloseUp.Refit;

/// <summary>Writes the sheet by which a car is put together: the order by reversed needs, each step with what the log remembers.</summary>
public static class RefitPlanner
{
    /// <param name="absent">Parts that are not here, by identifier: what waits for them comes last.</param>
    public static RefitSheet Of(CarHistory history, params ValueList<string> absent)
    {
        var car = history.Car;
        var network = NetworkPlanner.Of(new() { Car = car, Plan = Plan.Nothing });
        var (standing, memory) = (new CarStanding(car), new StripMemory(history));
        var held = new HeldSteps(standing, network, absent);
        var stance = car.Stance;
        var steps = RefitOrder.Of(network, memory, held)
            .SelectMany(task => Steps(standing, task, stance = task.Stance ?? stance, memory, held)).ToValueList();
        return new(steps, Leftover(car, steps), ToBleed(standing),
            network.Tasks
                .Where(task => task.Kind == TaskKind.Check || task is { Kind: TaskKind.HandIn, Mark: not { Progress: TaskProgress.Done } })
            .Select(task => new EndCheck(task.Id, task.Says, task.Takes, task.Origin, task.Cautions)
            { Waste = task.Waste, IsReady = task.Kind == TaskKind.HandIn || !task.Unseen.Any(standing.IsTrue) }).ToValueList());
    }

    /// <summary>A change of stance is one step; what follows by itself from another step is none.</summary>
    /// <param name="stance">The one that the car is in by then.</param>
    private static IEnumerable<RefitStep> Steps(CarStanding standing, WorkTask task, string? stance, StripMemory memory, HeldSteps held)
    {
        if (task.Kind == TaskKind.Stance)
        {
            var taken = task.Stance is { } named ? Fact.State(named) : default;
            yield return new(taken, task.Says, Side.None, Zone.WholeCar, task.Stance, task.Takes, task.Origin, null, [], [], [],
                task.Cautions, [])
            { WaitsFor = held.Of(task, null) };
        }

        foreach (var step in RefitOrder.Within(task, standing, memory).Where(step => !PlanOutline.FollowsByItself(step)))
        {
            var joint = step.Fact.Kind == FactKind.Open ? standing.Joints[step.Fact.Subject] : null;
            yield return new(step.Fact, PuttingBack.Says(step, standing), SideOf(step.Fact, standing), step.Place, task.Stance,
                step.Cost.Close, step.Origin, joint is null ? null : CardOf(joint),
                memory.Of(step.Fact), memory.PhotosOf(step.Fact), memory.BagsOf(step.Fact),
                [.. Access.Cautions.Weak(standing, stance, step.Posture).Union(Cautions(step, joint, standing, memory))],
                LooksOf(step.Fact, standing.Car, memory))
            { WaitsFor = held.Of(task, step) };
        }
    }

    /// <summary>Those of the step; that a weld's gate is closed; and that what was heated at the strip is not fitted again.</summary>
    private static ValueList<string> Cautions(Step step, Joint? joint, CarStanding standing, StripMemory memory) =>
    [
        .. new[]
        {
            WeldGate.Says(standing, joint),
            step.Prop,
            joint is not null && UsualCautions.IsScrapWhenHeated(joint) && memory.IsHeated(joint) ? UsualCautions.Heated : null,
        }.OfType<string>().Concat(step.Cautions).Distinct(),
    ];

    private static Side SideOf(Fact fact, CarStanding standing)
    {
        var parts = fact.Kind switch
        {
            FactKind.Off when standing.Parts.TryGetValue(fact.Subject, out var part) => [part.Side],
            FactKind.Open =>
                standing.Joints[fact.Subject].Holds.Select(part => standing.Parts[part].Side).Where(side => side != Side.None).Distinct()
                    .ToArray(),
            _ => Array.Empty<Side>(),
        };
        return parts.Length == 1 ? parts[0] : Side.None;
    }

    /// <summary>Nothing is said yet of the threads: the card asks where it has to. Clips, hoses and the like have none.</summary>
    private static ClosingCard? CardOf(Joint joint)
    {
        if (joint is { Thread: null, Torque: null, SingleUse: false, AtRideHeight: false } || joint.Count > TighteningSequence.Most)
            return null;
        var card = ClosingCard.Of(joint, ThreadCondition.NotSaid, ThreadCondition.NotSaid, rows: null);
        return card.IsGood ? card.Value : null;
    }

    /// <summary>A sub-assembly closes what its parts close.</summary>
    private static ValueList<Look> LooksOf(Fact fact, Car car, StripMemory memory)
    {
        var fitted = fact.Kind != FactKind.Off
            ? []
            : car.Structure.SubAssemblies.FirstOrDefault(unit => unit.Id == fact.Subject)?.Members ?? [fact.Subject];
        return car.Structure.Spaces.Where(space => space.ClosedBy.Any(fitted.Contains)).Select(space => new Look(space.Id, space.Name,
            LastLook.Inside(car, space).SelectMany(memory.BagsOf).Distinct().ToValueList(),
            memory.IsPhotographed($"space {space.Id}"))).ToValueList();
    }

    private static ValueList<Bag> Leftover(Car car, ValueList<RefitStep> steps) =>
        car.Bags.Where(bag => !bag.IsEmpty).Except(steps.SelectMany(step => step.Bags)).ToValueList();

    private static ValueList<Joint> ToBleed(CarStanding standing) =>
        standing.Car.Disturbed.Where(one => EndChecks.IsToBleed(one, standing)).Select(one => standing.Joints[one.Fact.Subject])
            .ToValueList();
}
