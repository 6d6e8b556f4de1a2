using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Checks;
using Refettle.Logbook;
using Refettle.Stuck;
using Refettle.Tests.Access;
using Refettle.Timeline.Network;

namespace Refettle.Tests.Timeline.Network;

/// <summary>How a car came apart so far.</summary>
public enum Apart
{
    NotYet,
    ByPlan,

    /// <summary>Some parts are said to be off, and nothing of what they needed first.</summary>
    AsTold,
}

/// <summary>Random cars with hazards, zones, stuck joints and jobs, partly taken apart, and the tasks derived for random goals.</summary>
internal static class RandomNetworks
{
    private static readonly AccessPlanner Planner = new(new ReducedSolver());

    /// <summary>Null where the goals cannot be reached.</summary>
    public static (NetworkQuestion Question, TaskNetwork Network)? Make(int seed, Apart apart, bool goesBackOtherwise = false)
    {
        var random = new Random(seed);
        var car = Rusty(Whole(RandomCars.Make(seed)), random, isHot: seed % 3 == 0);
        if (goesBackOtherwise)
            car = car with { Structure = Otherwise(car.Structure, new Random(seed + 1000)) };
        var parts = car.Structure.Parts.Where(part => !part.Fixed).ToList();
        Fact Goal() => parts[random.Next(parts.Count)] is var part && random.Next(2) == 0 ? Fact.Off(part.Id) : Fact.Free(part.Id);
        car = apart switch
        {
            Apart.ByPlan => Begun(car, Goal(), random),
            Apart.AsTold =>
                Told(car, [.. Enumerable.Range(0, 1 + random.Next(4)).Select(_ => Fact.Off(parts[random.Next(parts.Count)].Id))]),
            _ => car,
        };
        Job[] jobs =
        [
            new() { Id = "paint", Name = "Paint", Goals = [Goal()], Work = new(90),
                Waits = [new(WaitKind.Cure, "dries", 2, null, Origin.User)] },
            new() { Id = "plate", Name = "Plate", Goals = [Goal()], Work = new(10),
                Waits = [new(WaitKind.OutsideShop, "plater", 9, 20, Origin.User), new(WaitKind.Delivery, "bolts", 3, null, Origin.User)] },
        ];
        var goals = jobs.SelectMany(job => job.Goals).Append(Goal()).Distinct().ToValueList();
        car = car with
        {
            Verdicts = car.Structure.Parts.Where(part => !part.Fixed && random.Next(3) == 0)
                .Select(part => new Verdict(part.Id, (VerdictKind)random.Next(4), (DoneBy)random.Next(2), null)).ToValueList()
        };
        var plan = Planner.Reach(car, new() { Goals = goals });
        if (plan.Status == PlanStatus.Impossible)
            return null;
        var question = new NetworkQuestion { Car = car, Plan = plan, Jobs = jobs.ToValueList(), Ladders = Ladders };
        return (question, NetworkPlanner.Of(question));
    }

    /// <summary>The car with a plan for another goal partly carried out.</summary>
    private static Car Begun(Car car, Fact goal, Random random)
    {
        var plan = Planner.Reach(car, Question.For(goal));
        var done = plan.Steps.Take(random.Next(plan.Steps.Count + 1)).ToList();
        var stances = car.Structure.States.Where(state => state.IsStance).Select(state => Fact.State(state.Id)).ToHashSet();
        return car with
        {
            Done = done.Select(step => step.Fact).Where(fact => !stances.Contains(fact)).ToValueList(),
            Stance = done.Where(step => stances.Contains(step.Fact)).Select(step => step.Fact.Subject).LastOrDefault(car.Stance),
        };
    }

    private static Car Told(Car car, ValueList<Fact> off)
    {
        var (work, structure) = (WorkDone.From(car), new StructureBuilder());
        structure.Add(car.Structure, []);
        foreach (var fact in off)
            work.Do(fact, structure);
        return car with { Done = work.Facts(car.Structure) };
    }

    /// <summary>With stances and what makes safe under their usual names.</summary>
    private static Car Whole(Car car) => car with
    {
        Stance = Car.OnWheels,
        Structure = car.Structure with
        {
            States =
            [
                .. car.Structure.States,
                .. new[] { "brakes-drained",
                    "airbags-safe" }.Select(safe => new State
                        { Id = safe, Name = safe, Ways = [new() { Id = "hands", Tool = "hands", Open = new(9), Close = new(9) }] }),
                .. car.Structure.States.Any(state => state.Id == Car.OnWheels)
                    ? []
                    : new[] { new State
                        { Id = Car.OnWheels, Name = "On its wheels", IsStance = true,
                            Ways = [new() { Id = "jack", Tool = "jack", Open = new(10) }] } },
            ],
        },
    };

    /// <summary>Some joints and parts go back by ways of their own, with needs at random, some with sparks.</summary>
    private static Structure Otherwise(Structure structure, Random random)
    {
        var things = structure.Parts.Where(part => !part.Fixed).ToList();
        RefitWay? Back() => random.Next(3) > 0 ? null : new()
        {
            Tool = random.Next(4) == 0 ? "cut-off wheel" : "helper and jack",
            Takes = new(17),
            Clear = [.. Enumerable.Range(0, random.Next(3))
                .Select(_ => random.Next(2) == 0
                    ? Fact.Off(things[random.Next(things.Count)].Id)
                    : Fact.Open(structure.Joints[random.Next(structure.Joints.Count)].Id))],
            Origin = Origin.User,
        };
        foreach (var (joint, back) in structure.Joints.Select(joint => (joint, Back())).Where(pair => pair.Item2 is not null).ToList())
            structure = Unless(structure,
                structure with
                { Joints = structure.Joints.Select(one => one.Id == joint.Id ? one with { Refit = back } : one).ToValueList() });
        foreach (var (part, back) in things.Select(part => (part, Back())).Where(pair => pair.Item2 is not null))
            structure = Unless(structure,
                structure with
                {
                    Parts = structure.Parts.Select(one => one.Id == part.Id ? one with { Out = one.Out with { Refit = back } } : one)
                        .ToValueList()
                });
        return structure;
    }

    private static Structure Unless(Structure old, Structure with) =>
        StructureCheck.Of(with).Any(fault => fault.Found.StartsWith("circular", StringComparison.Ordinal)) ? old : with;

    /// <param name="isHot">Some ways by cut-off wheel, some welds.</param>
    private static Car Rusty(Car car, Random random, bool isHot)
    {
        var hazards = car.Structure.Parts.Select(part => random.Next(5) == 0 ? part with { Hazards = [(Hazard)random.Next(5)] } : part);
        var joints = car.Structure.Joints.Select(joint => joint with
        {
            SingleUse = random.Next(4) == 0,
            AtRideHeight = random.Next(6) == 0,
            Kind = random.Next(8) == 0 && isHot ? JointKind.Weld : JointKind.Bolt,
            Ways = joint.Ways
                .Select(way => isHot && way.Tool == "tool 4" ? way with { Tool = "cut-off wheel", Open = new(1), Close = new(1) } : way)
                .ToValueList(),
        });
        var tries = car.Structure.Joints.Where(_ => random.Next(4) == 0)
            .Select(joint => new Try(joint.Id, random.Next(2) == 0 ? "hands" : "coil", null, false, null));
        return car with
        {
            Structure = car.Structure with
            {
                Parts = hazards.ToValueList(),
                Joints = joints.ToValueList(),
                Zones = car.Structure.Zones
                        .Select(zone => zone with { Near = random.Next(3) == 0 ? [] : [zone.Id], Exposure = random.Next(5) })
                        .ToValueList()
            },
            Tries = tries.ToValueList(),
        };
    }

    public static LadderSet Ladders { get; } = new([new()
    {
        Id = "any",
        Name = "Any",
        Origin = "made up",
        Rungs =
        [
            new() { Id = "hands", Says = "By hand", Takes = new(3), Odds = [1, 0.6, 0.3, 0.1, 0] },
            new() { Id = "soak", Says = "Soak", Takes = new(3), Waits = new(720), IsSoak = true, Odds = [0.1, 0.1, 0, 0, 0] },
            new() { Id = "coil", Says = "Heat by coil", Takes = new(12), Danger = Danger.Heat, Odds = [1, 0.9, 0.6, 0.3, 0.1] },
            new() { Id = "cut", Says = "Cut", Takes = new(30), Danger = Danger.Cutting | Danger.Spark, Destroys = ["bolt"],
                Odds = [1, 1, 1, 1, 1] },
        ],
    }]);
}
