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

    private static Joint Bolt(string id, string one, string other) =>
        new() { Id = id, Holds = [one, other], Ways = [new() { Id = "spanner", Tool = "spanner", Open = new(2), Close = new(2) }] };
}
