using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Stuck;
using Refettle.Tests.Access;

namespace Refettle.Tests.Stuck;

/// <summary>No fuel-system part, brake fluid or airbag near a flame, spark or cut: 29 CFR 1910.252(a) asks for combustibles out of reach;
/// that rubber and plastic may be shielded instead is common practice, no source.</summary>
public sealed class GateTests
{
    private static readonly Rung Flame = Sure("flame", Danger.Flame | Danger.Heat);

    private static readonly Rung Coil = Sure("coil", Danger.Heat);

    [Theory]
    [InlineData(Hazard.Fuel)]
    [InlineData(Hazard.BrakeFluid)]
    [InlineData(Hazard.Airbag)]
    public void Flame_waits_until_what_burns_is_off_and_no_shield_opens_the_gate(Hazard hazard)
    {
        var car = Car(hazard);
        var shielded = new AtHand([], ["tank"]);
        Assert.NotEmpty(Of(car, Flame, shielded));
        Assert.Empty(Of(car with { Done = [Fact.Off("tank")] }, Flame, shielded));
        Assert.Empty(Of(car, Coil, AtHand.Nothing));
    }

    [Theory]
    [InlineData(Hazard.Rubber)]
    [InlineData(Hazard.Plastic)]
    public void Rubber_and_plastic_may_be_shielded(Hazard hazard)
    {
        Assert.NotEmpty(Of(Car(hazard), Coil, AtHand.Nothing));
        Assert.Empty(Of(Car(hazard), Coil, new([], ["tank"])));
    }

    [Fact]
    public void A_zone_that_says_nothing_of_its_neighbours_counts_all_as_near()
    {
        var car = Car(Hazard.Fuel, near: []);
        Assert.NotEmpty(Of(car, Flame, AtHand.Nothing));
        Assert.Empty(Of(Car(Hazard.Fuel, near: ["front"], zone: "rear"), Flame, AtHand.Nothing));
    }

    /// <summary>A distance is the same both ways: it is enough that one of two zones says so.</summary>
    [Fact]
    public void A_zone_is_near_when_it_says_so_itself()
    {
        var car = Car(Hazard.Fuel, near: ["rear"], zone: "rear");
        Assert.Empty(Of(car, Flame, AtHand.Nothing));
        var other = car.Structure with { Zones = [.. car.Structure.Zones, new() { Id = "other", Name = "Other", Near = ["rear"] }] };
        Assert.NotEmpty(Of(car with { Structure = other }, Flame, AtHand.Nothing));
    }

    /// <summary>A fuel pipe that starts in another zone and ends at something here.</summary>
    [Fact]
    public void What_runs_on_into_a_zone_near_counts_there()
    {
        var car = Car(Hazard.Fuel, near: ["rear"], zone: "rear");
        var ends = car.Structure with
        {
            Parts = [.. car.Structure.Parts, new() { Id = "filter", Name = "Filter", Zone = "rear" }],
            Joints = [.. car.Structure.Joints, new() { Id = "union", Holds = ["tank", "filter"], Ways = [] }],
        };
        Assert.NotEmpty(Of(car with { Structure = ends }, Flame, AtHand.Nothing));
        Assert.Empty(Of(car with { Structure = ends, Done = [Fact.Off("tank")] }, Flame, AtHand.Nothing));
    }

    /// <summary>A tank that lies on the bench is no safer to cut at.</summary>
    [Theory]
    [InlineData(Hazard.Fuel, true)]
    [InlineData(Hazard.Airbag, true)]
    [InlineData(Hazard.BrakeFluid, false)]
    public void What_holds_fuel_or_an_airbag_is_never_worked_on_with_fire(Hazard hazard, bool isClosed)
    {
        var car = Car(hazard);
        var joint = car.Structure.Joints[0] with { Holds = ["tank", "arm"] };
        var off = new CarStanding(car with
        { Structure = car.Structure with { Joints = [joint] }, Done = [Fact.Off("tank"), Fact.Off("arm")] });
        Assert.Equal(isClosed, Gate.Of(off, joint, Flame, AtHand.Nothing).Count > 0);
        Assert.Equal(isClosed, Gate.OpenedBy(off, joint, Flame, AtHand.Nothing) is null);
    }

    [Fact]
    public void What_a_try_destroys_must_be_in_hand()
    {
        var cut = Sure("cut", Danger.None) with { Destroys = ["bush"] };
        Assert.NotEmpty(Of(Car(Hazard.Rubber), cut, AtHand.Nothing));
        Assert.Empty(Of(Car(Hazard.Rubber), cut, new(["bush"], [])));
    }

    /// <summary>Over random cars: whatever is offered as next, its gate is open at that moment.</summary>
    [Fact]
    public void Advice_never_offers_a_gated_try()
    {
        var offered = 0;
        for (var seed = 0; seed < 300; seed++)
        {
            var car = WithHazards(RandomCars.Make(seed), seed);
            var standing = new CarStanding(car);
            foreach (var joint in car.Structure.Joints)
            {
                var answer = StuckAdvice.Of(car, joint.Id, Ladder(), AtHand.Nothing);
                if (answer.Next is not { } next)
                    continue;
                offered++;
                Assert.Empty(Gate.Of(standing, joint, next.Best, AtHand.Nothing));
                Assert.All(next.Options, option => Assert.Empty(Gate.Of(standing, joint, option.Rung, AtHand.Nothing)));
            }
        }

        Assert.True(offered > 100);
    }

    internal static Car WithHazards(Car car, int seed)
    {
        var random = new Random(seed);
        var parts = car.Structure.Parts.Select(part => random.Next(4) == 0 ? part with { Hazards = [(Hazard)random.Next(5)] } : part);
        var zones = car.Structure.Zones.Select(zone => zone with { Near = random.Next(2) == 0 ? ["z0"] : [] });
        var off = car.Structure.Parts.Skip(1).Where(_ => random.Next(2) == 0).Select(part => Fact.Off(part.Id));
        return car with
        { Structure = car.Structure with { Parts = parts.ToValueList(), Zones = zones.ToValueList() }, Done = off.ToValueList() };
    }

    internal static LadderSet Ladder() => new([new()
    {
        Id = "any",
        Name = "Any",
        Origin = "made up",
        Rungs = [Sure("hands", Danger.None) with { Odds = [1, 0.8, 0.5, 0.2, 0] }, Coil with { Odds = [1, 1, 0.9, 0.5, 0.3] }, Flame],
    }]);

    private static ValueList<ClosedBy> Of(Car car, Rung rung, AtHand atHand) =>
        Gate.Of(new CarStanding(car), car.Structure.Joints[0], rung, atHand);

    private static Rung Sure(string id, Danger danger) =>
        new() { Id = id, Says = id, Takes = new(10), Odds = [1, 1, 1, 1, 1], Danger = danger };

    private static Car Car(Hazard hazard, ValueList<string>? near = null, string zone = "front") => new()
    {
        Id = "car",
        Name = "Car",
        Structure = new()
        {
            Zones = [new() { Id = "front", Name = "Front", Near = ["front"] },
                new() { Id = "rear", Name = "Rear", Near = near ?? ["rear"] }],
            Parts =
            [
                new() { Id = "shell", Name = "Shell", Fixed = true },
                new() { Id = "arm", Name = "Arm", Zone = near is null ? "front" : "rear" },
                new() { Id = "tank", Name = "Tank", Zone = near is null ? zone : zone == "rear" ? "other" : "front", Hazards = [hazard] },
            ],
            Joints = [new() { Id = "bolt", Holds = ["arm", "shell"], Ways = [new() { Id = "w", Tool = "spanner" }] }],
        },
    };
}
