using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Server.Tests;
using Refettle.Web.Steps;
using Refettle.Web.Words;

namespace Refettle.Web.Tests.Steps;

public sealed class PlanProgressTests
{
    private static readonly Car _car = new()
    { Id = SmallCar.Id, Name = "Small Heron", Structure = SmallCar.Structure, Stance = "on-wheels" };
    private static readonly Plan _plan = new AccessPlanner(new ReducedSolver()).Reach(_car, Question.For(Fact.Free("rear-axle")));

    [Fact]
    public void Nothing_is_done_at_first()
    {
        var progress = PlanProgress.Of(_plan, new(_car));
        Assert.Equal((0, 0, _plan.Cost.Open), (progress.DoneCount, progress.Next, progress.Left));
    }

    [Fact]
    public void Steps_in_the_log_are_done_and_the_first_other_one_is_next()
    {
        var first = _plan.Steps.Take(2).Select(step => step.Fact);
        var progress = PlanProgress.Of(_plan, new(_car with { Done = first.ToValueList() }));
        Assert.Equal((2, 2), (progress.DoneCount, progress.Next));
    }

    [Fact]
    public void The_stance_that_the_car_is_in_is_done()
    {
        var progress = PlanProgress.Of(_plan, new(_car with { Stance = "on-stands" }));
        var stands = _plan.Steps.Select(step => step.Fact).ToList().IndexOf(Fact.State("on-stands"));
        Assert.Equal([stands], Enumerable.Range(0, _plan.Steps.Count).Where(step => progress.Done[step]));
    }

    /// <summary>Wheels, stands, wheels again: the first change is past once work that needed it is done, though the car left it.</summary>
    [Fact]
    public void A_stance_taken_twice_is_done_twice()
    {
        var plan = _plan with
        {
            Steps = [Step("on-stands"), Work("a", "on-stands"), Step("on-wheels"), Work("b", "on-wheels"), Step("on-stands"),
                Work("c", "on-stands")]
        };
        Assert.Equal([true, true, true, false, false, false], Done("on-wheels", "a"));
        Assert.Equal([true, true, true, true, true, false], Done("on-stands", "a", "b"));
        Assert.Equal([true, true, false, false, false, false], Done("on-stands", "a"));

        bool[] Done(string stance, params string[] done) => [.. PlanProgress.Of(plan, Lookup(stance, done)).Done];
    }

    [Fact]
    public void A_part_is_free_by_what_was_done_before()
    {
        var all = _plan.Steps.Where(step => !step.FollowsByItself()).Select(step => step.Fact);
        var progress = PlanProgress.Of(_plan, new(_car with { Done = all.ToValueList(), Stance = "on-stands" }));
        Assert.Equal(-1, progress.Next);
    }

    private static CarLookup Lookup(string stance, string[] done)
    {
        var joints = new[] { "a", "b", "c" }.Select(id => new Joint { Id = id, Holds = ["body", "propshaft"], Ways = [] });
        var structure = SmallCar.Structure with { Joints = joints.ToValueList() };
        return new(_car with { Structure = structure, Stance = stance, Done = done.Select(Fact.Open).ToValueList() });
    }

    private static Step Step(string stance) =>
        new() { Fact = Fact.State(stance), Way = "", Says = stance, Place = "car", Posture = "standing" };

    private static Step Work(string joint, string stance) =>
        new()
        {
            Fact = Fact.Open(joint),
            Way = "",
            Says = joint,
            Place = "car",
            Posture = "standing",
            Stance = stance,
            Needs = [Fact.State(stance)]
        };
}
