namespace Refettle.Tests.Access;

/// <summary>Small random cars with blockers, bench ways, sub-assemblies, stances and unique parts.</summary>
internal static class RandomCars
{
    public static Car Make(int seed, int parts = 14)
    {
        var random = new Random(seed);
        var all = Enumerable.Range(1, parts).Select(number => PartOf(random, number, parts)).Prepend(
            new Part { Id = "p0", Name = "Shell", Fixed = true, Zone = "z0" });
        var joints = Enumerable.Range(1, parts).SelectMany(number => JointsOf(random, number, parts));
        return new()
        {
            Id = "car",
            Name = "Car",
            Stance = "wheels",
            Structure = new()
            {
                Zones = [.. Enumerable.Range(0, 3).Select(zone => new Zone { Id = $"z{zone}", Name = $"Zone {zone}" })],
                States = [Stance("wheels"), Stance("stands"),
                    new() { Id = "drained", Name = "Drained", Ways = [WayOf(random, "drain", parts, [])] }],
                Parts = all.ToValueList(),
                Joints = joints.ToValueList(),
                SubAssemblies = [.. Enumerable.Range(0, 2).Select(unit => UnitOf(random, unit, parts))],
                Spaces = [new() { Id = "space", Name = "Space", ClosedBy = ["p1", "p2"] }],
            },
        };
    }

    public static Refettle.Access.Question Ask(Car car, int seed)
    {
        var random = new Random(seed);
        string Any() => car.Structure.Parts[random.Next(1, car.Structure.Parts.Count)].Id;
        var without = random.Next(4) == 0 ? Any() : null;
        Fact[] goals = [Fact.Free(Any()), random.Next(2) == 0 ? Fact.Reach("space") : Fact.Off(Any())];
        return new()
        {
            Goals = goals.Distinct().Where(goal => goal.Subject != without).ToValueList(),
            Without = without is null ? [] : [without],
        };
    }

    private static Part PartOf(Random random, int number, int parts) => new()
    {
        Id = $"p{number}",
        Name = $"Part {number}",
        Zone = $"z{random.Next(3)}",
        Scarcity = random.Next(8) == 0 ? Scarcity.Unique : Scarcity.Stocked,
        Mass = new(random.Next(1, 30)),
        Out = new() { Off = new(random.Next(5)), On = new(random.Next(5)), Clear = Clear(random, number, parts) },
    };

    private static IEnumerable<Joint> JointsOf(Random random, int number, int parts)
    {
        for (var joint = random.Next(1, 4); joint > 0; joint--)
        {
            var other = random.Next(number);
            yield return new()
            {
                Id = $"j{number}-{joint}",
                Holds = [$"p{number}", $"p{other}"],
                Ways = [.. Enumerable.Range(0, random.Next(1, 4))
                    .Select(way => WayOf(random, $"w{way}", parts, Clear(random, number, parts)))],
            };
        }
    }

    private static Way WayOf(Random random, string id, int parts, ValueList<Fact> clear) => new()
    {
        Id = id,
        Tool = $"tool {random.Next(5)}",
        Open = new(random.Next(1, 9)),
        Close = new(random.Next(9)),
        Where = random.Next(5) == 0 ? WorkPlace.OnBench : WorkPlace.OnCar,
        Destroys = random.Next(9) == 0 ? [$"p{random.Next(1, parts + 1)}"] : [],
        Clear = random.Next(4) == 0 ? [.. clear, Fact.State(random.Next(2) == 0 ? "stands" : "drained")] : clear,
    };

    // Mostly outward (a later part blocks an earlier one), sometimes inward, so that circles arise.
    private static ValueList<Fact> Clear(Random random, int number, int parts) =>
        random.Next(3) != 0
            ? []
            : [Fact.Off($"p{(random.Next(5) == 0 ? random.Next(1, parts + 1) : random.Next(Math.Min(number + 1, parts), parts + 1))}")];

    private static SubAssembly UnitOf(Random random, int unit, int parts) => new()
    {
        Id = $"u{unit}",
        Name = $"Unit {unit}",
        Members = Enumerable.Range(0, 4).Select(_ => $"p{random.Next(1, parts + 1)}").Append("p1").Append("p3").Distinct().ToValueList(),
        Out = new() { Off = new(random.Next(1, 6)), On = new(3) },
    };

    private static State Stance(string id) => new()
    {
        Id = id,
        Name = id,
        IsStance = true,
        Ways = [new() { Id = "jack", Tool = "jack", Open = new(5), Close = new(5) }],
    };
}
