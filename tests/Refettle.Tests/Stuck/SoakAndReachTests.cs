using Refettle.Access;
using Refettle.Stuck;
using Refettle.Tests.Access;

namespace Refettle.Tests.Stuck;

public sealed class SoakAndReachTests
{
    private static readonly DateTimeOffset Evening = new(2027, 1, 9, 18, 0, 0, TimeSpan.Zero);

    private static readonly LadderSet Set = new([new()
    {
        Id = "any",
        Name = "Any",
        Origin = "made up",
        Rungs =
        [
            new() { Id = "soak", Says = "Soak", Takes = new(5), Waits = new(720), IsSoak = true, Odds = [0.3, 0.2, 0.1, 0, 0] },
            new() { Id = "bar", Says = "Bar", Tool = "breaker bar", Takes = new(10), Odds = [1, 0.8, 0.4, 0.1, 0],
                OddsSoaked = [1, 0.9, 0.7, 0.4, 0.2] },
            new() { Id = "cut", Says = "Cut", Tool = "saw", Takes = new(60), Odds = [1, 1, 1, 1, 1], Destroys = ["bush"] },
        ],
    }]);

    [Fact]
    public void A_soak_is_ready_when_its_hours_are_over_and_helps_from_then_on()
    {
        var car = Car() with { Soaking = [new("bolt", "soak", Evening)] };
        var (early, late) = (Ask(car, Evening.AddHours(3)), Ask(car, Evening.AddHours(12)));
        Assert.False(early.Soak!.IsReady(Evening.AddHours(3)));
        Assert.Equal(Evening.AddHours(12), late.Soak!.Ready);
        Assert.True(Frees(late, "bar") > Frees(early, "bar"));
        Assert.DoesNotContain(late.Next!.Options, option => option.Rung.Id == "soak");
    }

    /// <summary>Begun on a phone whose clock is a day ahead: never more than the whole soak is left, never
    /// less than nothing, and it is said.</summary>
    [Fact]
    public void A_soak_begun_by_a_clock_that_is_ahead_is_not_ready_early_and_is_doubted()
    {
        var clock = Ask(Car() with { Soaking = [new("bolt", "soak", Evening.AddDays(1))] }, Evening).Soak!;
        Assert.False(clock.IsReady(Evening));
        Assert.Equal(TimeSpan.FromHours(12), clock.Left(Evening));
        Assert.Equal("its begin lies 1 day ahead of this clock: go by your own watch", clock.Doubt(Evening));
        Assert.Equal(TimeSpan.FromHours(6), clock.Left(Evening.AddHours(30)));
        Assert.Null(clock.Doubt(Evening.AddDays(1)));
        Assert.Equal(TimeSpan.Zero, clock.Left(Evening.AddDays(9)));
    }

    [Fact]
    public void A_tool_that_does_not_reach_is_not_offered_until_it_does()
    {
        var car = Car() with { Reach = [new("bolt", "bar", false, [Fact.Off("tank")])] };
        Assert.DoesNotContain(Ask(car).Next!.Options, option => option.Rung.Id == "bar");
        Assert.Contains(Ask(car with { Done = [Fact.Off("tank")] }).Next!.Options, option => option.Rung.Id == "bar");
        Assert.Equal([Fact.Off("tank")], Gate.OpenedBy(new(car), car.Structure.Joints[0], Set.Ladders[0].Rungs[1], AtHand.Nothing)!);
        var never = car with { Reach = [new("bolt", "bar", false, [])] };
        Assert.Null(Gate.OpenedBy(new(never), never.Structure.Joints[0], Set.Ladders[0].Rungs[1], AtHand.Nothing));
    }

    [Fact]
    public void A_hired_tool_is_offered_on_its_days_only()
    {
        var car = Car() with
        {
            Calendar = new()
            {
                Facilities = [new()
                    { Id = "bar", Name = "Breaker bar", Kind = FacilityKind.Tool, From = new(2027, 1, 12), Until = new(2027, 1, 13) }]
            }
        };
        Assert.DoesNotContain(Ask(car, Evening).Next!.Options, option => option.Rung.Id == "bar");
        Assert.Contains(Ask(car, Evening.AddDays(3)).Next!.Options, option => option.Rung.Id == "bar");
    }

    /// <summary>Over random cars: leave opens the gate of what is not in hand and no other.</summary>
    [Fact]
    public void Leave_is_for_what_is_not_in_hand_and_for_nothing_else()
    {
        var (opened, stayed) = (0, 0);
        var cut = Set.Ladders[0].Rungs[2] with { Danger = Danger.Cutting };
        for (var seed = 0; seed < 200; seed++)
        {
            var car = GateTests.WithHazards(RandomCars.Make(seed), seed);
            foreach (var joint in car.Structure.Joints)
            {
                var given = car with { LeaveForMissing = [new(joint.Id, "cut", "in a hurry")] };
                var without = Gate.Of(new(car), joint, cut, new(["bush"], []));
                var with = Gate.Of(new CarStanding(given), joint, cut, AtHand.Nothing);
                Assert.Equal(without, with);
                _ = with.Count == 0 ? opened++ : stayed++;
            }
        }

        Assert.True(opened > 20 && stayed > 20);
    }

    [Fact]
    public void A_joint_that_was_rounded_goes_on_on_its_own_ladder_to_the_end()
    {
        var ladders = new LadderSet([.. Set.Ladders, new()
        {
            Id = "rounded", Name = "Rounded", Condition = JointCondition.Rounded, Origin = "made up",
            Rungs = [new() { Id = "grip", Says = "Grip", Takes = new(8), Odds = [0.8, 0.6, 0.4, 0.2, 0.1] },
                new() { Id = "split", Says = "Split", Takes = new(30), Odds = [1, 1, 1, 1, 1] }],
        }]);
        Try[] tries = [new("bolt", "bar", JointCondition.Rounded, false, null), new("bolt", "grip", null, false, null),
            new("bolt", "split", JointCondition.Freed, false, null)];
        StuckAnswer After(int count) =>
            StuckAdvice.Of(Car() with { Tries = tries.Take(count).ToValueList() }, "bolt", ladders, AtHand.Nothing);
        Assert.Equal("grip", After(1).Next!.Best.Id);
        Assert.Equal("split", After(2).Next!.Best.Id);
        Assert.Equal(JointCondition.Freed, After(3).Condition);
        Assert.Null(After(3).Next);
    }

    private static double Frees(StuckAnswer answer, string rung) => answer.Next!.Options.First(option => option.Rung.Id == rung).Frees;

    private static StuckAnswer Ask(Car car, DateTimeOffset? now = null) => StuckAdvice.Of(car, "bolt", Set, AtHand.Nothing, now);

    private static Car Car() => new()
    {
        Id = "car",
        Name = "Car",
        Structure = new()
        {
            Parts = [new() { Id = "shell", Name = "Shell", Fixed = true }, new() { Id = "arm", Name = "Arm" },
                new() { Id = "tank", Name = "Tank" }],
            Joints = [new() { Id = "bolt", Holds = ["arm", "shell"], Ways = [new() { Id = "w", Tool = "spanner" }] }],
        },
    };
}
