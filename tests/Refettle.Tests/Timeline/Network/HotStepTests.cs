using Refettle.Access;
using Refettle.Access.Fire;
using Refettle.Tests.Access;
using Refettle.Timeline.Network;

namespace Refettle.Tests.Timeline.Network;

/// <summary>A plan's own ways with fire get what tries get: shields and deliveries before them (29 CFR 1910.252(a)); a
/// weld is gated whatever cut it.</summary>
public sealed class HotStepTests
{
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Hot_ways_of_random_plans_wait_for_a_shield_and_for_what_they_destroy(bool isBegun)
    {
        var hot = 0;
        for (var seed = 0; seed < 150; seed++)
        {
            if (RandomNetworks.Make(seed, isBegun ? Apart.ByPlan : Apart.NotYet) is not { } one)
                continue;
            foreach (var (task, step) in one.Network.Tasks.Where(task => task.Kind == TaskKind.Strip)
                .SelectMany(task => task.Steps.Select(step => (task, step))).Where(pair => IsHot(one.Question.Car, pair.step)))
            {
                hot++;
                Assert.Contains(one.Network.Links, link => link.After == task.Id && link.Before == $"shield.{step.Fact.Subject}");
                Assert.All(step.Destroys,
                    part => Assert.Contains(one.Network.Links, link => link.After == task.Id && link.Before == $"wait.delivery.{part}"));
            }
        }

        Assert.True(hot > 5, $"{hot}");
    }

    /// <summary>A part whose way out is by flame or disc: the same duties of 29 CFR 1910.252(a) as for a joint.</summary>
    [Fact]
    public void What_is_taken_off_with_something_hot_waits_for_a_shield_too()
    {
        var cut = Cut([]);
        var parts = cut.Structure.Parts
            .Select(part => part.Id == "arm" ? part with { Out = new() { Off = new(20), Tool = "torch" } } : part).ToValueList();
        var car = cut with { Done = [Fact.Open("bolt")], Structure = cut.Structure with { Parts = parts } };
        var plan = new AccessPlanner(new Refettle.Access.Derivation.ReducedSolver()).Reach(car, Question.For(Fact.Off("arm")));
        var network = NetworkPlanner.Of(new() { Car = car, Plan = plan });
        var off = network.Tasks.Single(task => task.Kind == TaskKind.Strip && task.Steps.Any(step => step.Fact == Fact.Off("arm")));
        Assert.Contains(network.Links, link => link.Before == "shield.arm" && link.After == off.Id);
        Assert.Contains(NetworkCheck.Of(car, plan.Question, network.Tasks.Where(task => task.Kind != TaskKind.Shield).ToList()),
            fault => fault.Found.Contains("not shielded", StringComparison.Ordinal));
    }

    [Fact]
    public void Leave_by_an_entry_lifts_the_wait_for_what_is_destroyed_and_nothing_else()
    {
        var car = Cut([]);
        Assert.Contains(Before(car), id => id == "wait.delivery.bush");
        var given = Before(car with { LeaveForMissing = [new("bolt", "wheel", "the bush is scrap")] });
        Assert.DoesNotContain("wait.delivery.bush", given);
        Assert.Contains("shield.bolt", given);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_weld_that_was_cut_is_not_welded_beside_a_tank(bool isTankOff)
    {
        var car = Cut(isTankOff ? [Fact.Open("seam"), Fact.Off("tank")] : [Fact.Open("seam")]);
        var network = NetworkPlanner.Of(new() { Car = car, Plan = Plan.Nothing });
        var weld = network.Tasks.Single(task => task.Kind == TaskKind.Refit && task.Steps.Any(step => step.Fact == Fact.Open("seam")));
        Assert.Equal(!isTankOff,
            weld.Says.Contains("gate is closed", StringComparison.Ordinal)
                && weld.Cautions.Any(caution => caution.Contains("Tank", StringComparison.Ordinal)));
        if (isTankOff)
            Assert.Contains(network.Links,
                link => link.Before == weld.Id
                    && network.Tasks.Single(task => task.Id == link.After).Steps.Any(step => step.Fact == Fact.Off("tank")));
        var sheet = Refettle.CloseUp.Refit.RefitPlanner.Of(new(car, [], []));
        Assert.Equal(!isTankOff,
            sheet.Steps.Single(step => step.Fact == Fact.Open("seam")).Cautions[0].Contains("Not to be welded", StringComparison.Ordinal));
    }

    private static bool IsHot(Car car, Step step) =>
        step.Fact.Kind == FactKind.Open && car.Structure.Joints.Single(joint => joint.Id == step.Fact.Subject) is var joint
        && joint.Ways.Single(way => way.Id == step.Way) is { Where: WorkPlace.OnCar } way && FireOracle.MakesFire(joint, way);

    private static HashSet<string> Before(Car car)
    {
        var plan = new AccessPlanner(new Refettle.Access.Derivation.ReducedSolver()).Reach(car, Question.For(Fact.Open("bolt")));
        return NetworkPlanner.Of(new() { Car = car, Plan = plan }).Links.Where(link => link.After == "strip.open.bolt")
            .Select(link => link.Before).ToHashSet();
    }

    internal static Car Cut(ValueList<Fact> done) => new()
    {
        Id = "car",
        Name = "Car",
        Done = done,
        Structure = new()
        {
            Parts =
            [
                new() { Id = "shell", Name = "Shell", Fixed = true }, new() { Id = "sill", Name = "Sill" },
                new() { Id = "arm", Name = "Arm" },
                new() { Id = "bush", Name = "Bush", Hazards = [Hazard.Rubber] },
                new() { Id = "tank", Name = "Tank", Hazards = [Hazard.Fuel] },
            ],
            Joints =
            [
                new() { Id = "seam", Kind = JointKind.Weld, Holds = ["sill", "shell"],
                    Ways = [new() { Id = "drill", Tool = "drill", Open = new(60), Close = new(90) }] },
                new() { Id = "bolt", Holds = ["arm", "shell"],
                    Ways = [new() { Id = "wheel", Tool = "cut-off wheel", Open = new(9), Destroys = ["bush"] }] },
            ],
        },
    };
}
