using Refettle.Stuck;
using Refettle.Web.Judging;
using Refettle.Web.Words;

namespace Refettle.Web.Tests.Judging;

public sealed class StuckCardTests
{
    private static readonly DateTimeOffset Evening = new(2027, 1, 9, 18, 0, 0, TimeSpan.Zero);

    private static readonly LadderSet Ladders = new([new()
    {
        Id = "any",
        Name = "Any",
        Origin = "made up.",
        Rungs =
        [
            new() { Id = "bar", Says = "Bar", Tool = "bar", Takes = new(8), Odds = [1, 0.5, 0.3, 0.1, 0],
                Mishaps = [new(JointCondition.Rounded, [0, 0.1, 0.1, 0.1, 0.1])] },
            new() { Id = "soak", Says = "Soak", Takes = new(5), Waits = new(720), IsSoak = true, Odds = [0.1, 0.1, 0, 0, 0] },
            new() { Id = "flame", Says = "Flame", Tool = "torch", Takes = new(60), Odds = [1, 1, 1, 1, 1], Danger = Danger.Flame },
        ],
    }, new() { Id = "rounded", Name = "Rounded", Condition = JointCondition.Rounded, Origin = "made up.",
        Rungs = [new() { Id = "split", Says = "Split", Takes = new(20), Odds = [1, 1, 1, 1, 1] }] }]);

    /// <summary>Over random cars: what the card offers as the next try has its gate open, and what it does not is told with why.</summary>
    [Fact]
    public void The_card_never_offers_a_gated_try()
    {
        var gated = 0;
        for (var seed = 0; seed < 200; seed++)
        {
            var random = new Random(seed);
            var car = Car(random.Next(2) == 0 ? Hazard.Fuel : Hazard.BrakeFluid, isOff: random.Next(2) == 0, near: random.Next(2) == 0);
            var card = new StuckCard(new(car), car.Structure.Joints[0], Ladders, AtHand.Nothing, Evening);
            var closed = card.Answer!.Closed.Select(gate => gate.Rung.Id).ToList();
            Assert.DoesNotContain(card.Next?.Id, closed);
            Assert.Equal(Gate.Of(new(car), car.Structure.Joints[0], Ladders.Ladders[0].Rungs[2], AtHand.Nothing).Count > 0,
                closed.Contains("flame"));
            gated += closed.Count;
        }

        Assert.InRange(gated, 20, 190);
    }

    [Fact]
    public void Every_way_a_try_can_end_has_a_button()
    {
        var car = Car(Hazard.Fuel, isOff: false, near: true);
        var card = new StuckCard(new(car), car.Structure.Joints[0], Ladders, AtHand.Nothing, Evening);
        Assert.Equal("bar", card.Next!.Id);
        Assert.Equal([null, JointCondition.Freed, JointCondition.Rounded], card.Outcomes.Select(outcome => outcome.Becomes));
        Assert.InRange(card.Belief.Sum(level => level.Now), 97, 103);
    }

    [Fact]
    public void A_soak_tells_how_long_it_still_takes()
    {
        var car = Car(Hazard.Fuel, isOff: false, near: true) with { Soaking = [new("bolt", "soak", Evening)] };
        StuckCard At(int hours) => new(new(car), car.Structure.Joints[0], Ladders, AtHand.Nothing, Evening.AddHours(hours));
        Assert.Contains("10 h", At(2).Clock, StringComparison.Ordinal);
        Assert.False(At(2).IsSoaked);
        Assert.True(At(12).IsSoaked);
    }

    private static Car Car(Hazard hazard, bool isOff, bool near) => new()
    {
        Id = "car",
        Name = "Car",
        Structure = new()
        {
            Zones = [new() { Id = "rear", Name = "Rear", Near = ["rear"] }, new() { Id = "front", Name = "Front", Near = ["front"] }],
            Parts = [new() { Id = "shell", Name = "Shell", Fixed = true }, new() { Id = "arm", Name = "Arm", Zone = "rear" },
                new() { Id = "line", Name = "Line", Zone = near ? "rear" : "front", Hazards = [hazard] }],
            Joints = [new() { Id = "bolt", Holds = ["arm", "shell"], Ways = [new() { Id = "w", Tool = "spanner" }] }],
        },
        Done = isOff ? [Fact.Off("line")] : [],
    };
}
