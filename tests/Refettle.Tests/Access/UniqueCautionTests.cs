using Refettle.Access;
using Refettle.Access.Derivation;

namespace Refettle.Tests.Access;

public sealed class UniqueCautionTests
{
    private static readonly AccessPlanner _planner = new(new ReducedSolver());

    /// <summary>Exactly those that are touched or passed: a warning at every step is none.</summary>
    [Fact]
    public void Every_step_tells_the_unique_parts_that_it_touches_or_passes_and_no_others()
    {
        var (opening, lifting) = (0, 0);
        for (var seed = 0; seed < 300; seed++)
        {
            var car = WithUniques(RandomCars.Make(seed), seed);
            var oracle = new UniqueOracle(car);
            foreach (var step in _planner.Reach(car, RandomCars.Ask(car, seed)).Steps)
            {
                var expected = oracle.Next(step);
                if (PlanOutline.FollowsByItself(step))
                    continue;
                Assert.True(expected.Equals(oracle.Told(step)),
                    $"seed {seed}, {step.Fact}: {string.Join(", ", expected)} expected, told {string.Join("; ", step.Cautions)}");
                Assert.True(step.Cautions.Count(caution => caution.StartsWith("Beside ", StringComparison.Ordinal)) <= 1);
                opening += step.Fact.Kind == FactKind.Open
                    && step.Cautions.Any(caution => caution.StartsWith("Beside ", StringComparison.Ordinal)) ? 1 : 0;
                lifting += step.Cautions.Any(caution => caution.StartsWith("Passes ", StringComparison.Ordinal)) ? 1 : 0;
            }
        }

        Assert.True(opening > 100 && lifting > 30, $"{opening} beside, {lifting} passed");
    }

    [Theory]
    [InlineData("rear", "rear", true)]
    [InlineData("rear", "front", false)]
    [InlineData("rear", Zone.WholeCar, true)]
    public void A_part_whose_place_nobody_said_may_be_anywhere(string arm, string badge, bool isBeside)
    {
        var car = new Car
        {
            Id = "car",
            Name = "Car",
            Structure = new()
            {
                Zones = [new() { Id = "rear", Name = "Rear" }, new() { Id = "front", Name = "Front" }],
                Parts = [new() { Id = "shell", Name = "Shell", Fixed = true, Zone = "rear" },
                    new() { Id = "arm", Name = "Arm", Zone = arm },
                    new() { Id = "badge", Name = "Badge", Zone = badge, Scarcity = Scarcity.Unique }],
                Joints = [Joint("bolt", "arm", "shell"), Joint("clip", "badge", "arm"), Joint("rivet", "badge", "shell")],
            },
        };
        var step = _planner.Reach(car, Question.For(Fact.Open("bolt"))).Steps.Single(step => step.Fact == Fact.Open("bolt"));
        Assert.Equal(isBeside ? ["Beside Badge, which is unique: there is no other. Cover it or keep clear."] : [],
            step.Cautions.Where(caution => caution.Contains("Badge", StringComparison.Ordinal)));
    }

    private static Joint Joint(string id, params string[] holds) =>
        new() { Id = id, Holds = holds.ToValueList(), Ways = [new() { Id = "spanner", Tool = "13 mm spanner", Open = new(1) }] };

    private static Car WithUniques(Car car, int seed)
    {
        var random = new Random(seed);
        return car with
        {
            Structure = car.Structure with
            {
                Parts = car.Structure.Parts
                    .Select(part => part.Fixed || random.Next(3) != 0 ? part : part with { Scarcity = Scarcity.Unique }).ToValueList()
            },
            Settings = car.Settings with { Lifted = car.Structure.Parts.Select(part => part.Id).ToValueList() },
        };
    }
}
