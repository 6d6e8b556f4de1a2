using Refettle.Access;
using Refettle.Access.Derivation;

namespace Refettle.Tests.Access;

public sealed class ProppingTests
{
    private static readonly AccessPlanner Planner = new(new ReducedSolver());

    [Fact]
    public void The_unit_that_is_lifted_is_held_up_before_its_last_joint_and_not_its_parts() =>
        Assert.Equal(["Hold up: Pack (22 kg)"], Props(Fact.Off("pack")));

    [Fact]
    public void A_part_that_is_unbolted_and_stays_is_held_up_too() =>
        Assert.Equal(["Hold up: Fan (15 kg)"], Props(Fact.Open("fan-core"), Fact.Open("fan-shell")));

    /// <summary>The gate hangs once its hinge is open, whatever plug is still in.</summary>
    [Theory]
    [InlineData(JointKind.Connector)]
    [InlineData(JointKind.Seal)]
    public void What_carries_nothing_holds_nothing_up(JointKind kind)
    {
        var car = Car();
        car = car with
        {
            Structure = new()
            {
                Parts = [car.Structure.Parts[0], new() { Id = "gate", Name = "Gate", Mass = new(29) }],
                Joints = [Bolt("hinge", "gate", "shell"), Bolt("plug", "gate", "shell", Fact.Open("hinge")) with { Kind = kind }],
            },
        };
        Assert.Equal(Fact.Open("hinge"),
            Assert.Single(Planner.Reach(car, Question.For(Fact.Off("gate"))).Steps, step => step.Prop is not null).Fact);
        Assert.Equal(Fact.Open("plug"),
            Assert.Single(Planner.Reach(car with { Done = [Fact.Open("hinge")] }, Question.For(Fact.Off("gate"))).Steps,
                step => step.Prop is not null).Fact);
    }

    /// <summary>The pipe is let go of first, and the box hangs on it.</summary>
    [Fact]
    public void What_hangs_on_what_is_let_go_of_is_held_up_with_it()
    {
        var car = Car();
        car = car with
        {
            Structure = new()
            {
                Parts = [car.Structure.Parts[0], new() { Id = "pipe", Name = "Pipe", Mass = new(5) },
                    new() { Id = "box", Name = "Box", Mass = new(8) }],
                Joints = [Bolt("pipe-shell", "pipe", "shell"), Bolt("pipe-box", "pipe", "box", Fact.Open("pipe-shell"))],
            },
        };
        var held = Assert.Single(Planner.Reach(car, Question.For(Fact.Off("box"))).Steps, step => step.Prop is not null);
        Assert.Equal((Fact.Open("pipe-shell"), "Hold up: Box, Pipe (13 kg)"), (held.Fact, held.Prop));
    }

    private static IEnumerable<string> Props(params Fact[] goals) =>
        Planner.Reach(Car(), Question.For(goals)).Steps.Select(step => step.Prop).OfType<string>();

    private static Car Car() => new()
    {
        Id = "car",
        Name = "Car",
        Structure = new()
        {
            Parts =
            [
                new() { Id = "shell", Name = "Shell", Fixed = true },
                new() { Id = "fan", Name = "Fan", Mass = new(15) },
                new() { Id = "core", Name = "Core", Mass = new(7) },
            ],
            Joints = [Bolt("fan-core", "fan", "core"), Bolt("core-shell", "core", "shell"), Bolt("fan-shell", "fan", "shell")],
            SubAssemblies = [new() { Id = "pack", Name = "Pack", Members = ["fan", "core"] }],
        },
    };

    private static Joint Bolt(string id, string one, string other, params ValueList<Fact> clear) =>
        new()
        {
            Id = id,
            Holds = [one, other],
            Ways = [new() { Id = "spanner", Tool = "spanner", Open = new(2), Close = new(2), Clear = clear }]
        };
}
