using Refettle.Peers.Cars;
using Refettle.Scope;

namespace Refettle.Solvers.Tests.Scope;

/// <summary>Jobs out of chance on generated cars, equal for equal seeds.</summary>
internal static class RandomScope
{
    public static ScopePlanner Planner { get; } = new(UnderTest.Make(), new MixedIntegerSolver());

    /// <summary>Figures are such that minutes and money turn into each other without rounding: an hour is worth 60.</summary>
    public static Car Make(int seed, int parts, int jobs, CarKind? kind = null)
    {
        var chance = new Random(seed);
        var shape = new CarShape(kind ?? (CarKind)(seed % 3), parts, seed);
        var car = CarGenerator.Make(shape);
        return WithRareParts(car, seed) with
        {
            Settings = car.Settings with { PerHour = new(60), UniqueOff = new(chance.Next(0, 40)) },
            Jobs = JobGenerator.Make(shape, jobs, seed),
        };
    }

    public static ScopeQuestion Question(Car car) => new() { PerHour = car.Settings.PerHour, PerPoint = new(10) };

    /// <summary>Limits that bite: a random share of what would be spent without them.</summary>
    public static ScopeQuestion Limited(Car car, int seed)
    {
        var chance = new Random(seed + 1_000_000);
        var all = Planner.Choose(car, Question(car)).Sum;
        return Question(car) with
        {
            Hours = new(decimal.Floor(all.Time.Value * chance.Next(10, 110) / 100)),
            Budget = seed % 3 == 0 ? null : new(decimal.Floor(all.Money.Amount * chance.Next(10, 110) / 100)),
        };
    }

    /// <summary>Every fourth car has a few parts that there is no other of.</summary>
    private static Car WithRareParts(Car car, int seed) => seed % 4 != 0 ? car : car with
    {
        Structure = car.Structure with
        {
            Parts = car.Structure.Parts.Select((part, index) => index % 3 == 2 ? part with { Scarcity = Scarcity.Unique } : part)
                .ToValueList(),
        },
    };
}
