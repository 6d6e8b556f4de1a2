using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Server.Tests;
using Refettle.Web.Drawing;

namespace Refettle.Web.Tests.Drawing;

public sealed class BundlesTests
{
    /// <summary>By hand: six joints hold the axle besides the wheels' (flange, hose, two dampers, two
    /// sets of U-bolts); the nuts of each wheel are its own, since the axle waits for the wheel anyway; the stands stand alone.</summary>
    [Fact]
    public void A_joint_is_drawn_with_the_only_step_that_waits_for_it()
    {
        var car = new Car { Id = SmallCar.Id, Name = "Small Heron", Structure = SmallCar.Structure, Stance = "on-wheels" };
        var plan = new AccessPlanner(new ReducedSolver()).Reach(car, Question.For(Fact.Off("rear-axle")));
        var bundles = new Bundles(plan, PlanGraph.Of(plan));
        var boxes = bundles.Steps.ToDictionary(steps => plan.Steps[steps[^1]].Fact, steps => steps.Count);
        Assert.Equal(1, boxes[Fact.State("on-stands")]);
        Assert.Equal(7, boxes[Fact.Off("rear-axle")]);
        Assert.Equal(2, boxes[Fact.Off("wheel-left")]);
        Assert.Equal(2, boxes[Fact.Off("wheel-right")]);
        Assert.Equal(plan.Steps.Count, boxes.Values.Sum());
    }

    [Fact]
    public void A_joint_that_two_steps_wait_for_stands_alone()
    {
        var plan = new Plan
        {
            Question = Question.For(Fact.Off("a"), Fact.Off("b")),
            Status = PlanStatus.Optimal,
            Steps = [Step(Fact.Open("shared")), Step(Fact.Open("own")), Step(Fact.Off("a"), Fact.Open("shared"), Fact.Open("own")),
                Step(Fact.Off("b"), Fact.Open("shared"))],
        };
        Assert.Equal(["0", "1 2", "3"], new Bundles(plan, PlanGraph.Of(plan)).Steps.Select(steps => string.Join(' ', steps)));
    }

    private static Step Step(Fact fact, params Fact[] needs) =>
        new() { Fact = fact, Way = "", Says = $"{fact}", Place = "car", Posture = "standing", Needs = needs.ToValueList() };
}
