using Refettle.Checks;
using Refettle.Kits;
using static Refettle.Tests.Checks.Small;

namespace Refettle.Tests.Kits;

public sealed class MirrorTests
{
    [Fact]
    public void A_mirrored_corner_is_as_the_kit_would_have_made_it()
    {
        var left = Brake.Start.Add(Brake.Pipe).Add(Brake.Hub, Spot.RearLeft).Add(Brake.Drum, Spot.RearLeft);
        var mirror = Mirror.Propose(left, Spot.RearLeft).Value;
        var mirrored = left.With(mirror.Added, mirror.Tied);
        var added = left.Add(Brake.Hub, Spot.RearRight).Add(Brake.Drum, Spot.RearRight);
        Assert.Equal(added.Parts.OrderBy(part => part.Id, StringComparer.Ordinal),
            mirrored.Parts.OrderBy(part => part.Id, StringComparer.Ordinal));
        Assert.Equal(added.Joints.OrderBy(joint => joint.Id, StringComparer.Ordinal),
            mirrored.Joints.OrderBy(joint => joint.Id, StringComparer.Ordinal));
    }

    [Fact]
    public void Loose_ends_are_mirrored_and_can_be_tied()
    {
        var left = Brake.Start.Add(Brake.Drum, Spot.RearLeft);
        var mirror = Mirror.Propose(left, Spot.Left).Value;
        var car = left.With(mirror.Added, mirror.Tied).Add(Brake.Hub, Spot.RearRight);
        Assert.Equal(["rr-drum", "rr-hub"], car.JointOf("rr-drum-seat")!.Holds);
        Assert.Null(car.JointOf("rl-drum-seat"));
        Assert.Empty(StructureCheck.Of(car));
    }

    [Fact]
    public void Things_with_a_side_alone_get_a_name_of_their_own_and_roles_stay()
    {
        var car = Of(Body, Part("seat") with { Name = "Left seat", Side = Side.Left, Roles = ["seat"] },
            Joint("seat-bolts", "seat", "body", Fact.Off("seat")) with { Name = "LEFT seat to floor" });
        car = car with { Joints = [car.Joints[0] with { Ways = [Way()], Refit = new() { Tool = "LEFT lever", Takes = new(4) } }] };
        car = car with
        {
            Parts = car.Parts
                .Select(part => part.Id == "seat"
                    ? part with { Out = new() { Refit = new() { Tool = "helper", Takes = new(2), Clear = [Fact.Open("seat-bolts")] } } }
                    : part).ToValueList()
        };
        var added = Mirror.Propose(car, Spot.Left).Value.Added;
        var seat = Assert.Single(added.Parts);
        Assert.Equal(("seat-right", "Right seat", Side.Right), (seat.Id, seat.Name, seat.Side));
        Assert.Equal(["seat"], seat.Roles);
        Assert.Equal(("seat-bolts-right", "RIGHT seat to floor"), (added.Joints.Single().Id, added.Joints.Single().Name));
        Assert.Equal(["seat-right", "body"], added.Joints.Single().Holds);
        Assert.Equal(("RIGHT lever", "open(seat-bolts-right)"),
            (added.Joints.Single().Refit!.Tool, seat.Out.Refit!.Clear.Single().ToString()));
    }

    [Fact]
    public void What_the_other_side_has_stays_and_what_lies_across_is_left_alone()
    {
        var car = Of(Body, Part("rl-a"), Part("rr-a") with { Name = "Mine" }, Part("rl-b"), Joint("link", "rl-a", "rr-a"));
        var added = Mirror.Propose(car, Spot.RearLeft).Value.Added;
        Assert.Equal(["rr-b"], added.Parts.Select(part => part.Id));
        Assert.Empty(added.Joints);
    }

    [Fact]
    public void Whatever_waits_for_a_loose_end_is_of_the_kit_of_its_own_side()
    {
        var waits = new Structure
        {
            Joints = [Joint("rl-hinge", "rl-box", "{lid}") with { Kit = "box rl" }],
            SubAssemblies = [new() { Id = "rl-unit", Name = "Unit", Members = ["rl-box", "{lid}"], Kit = "box rl" }],
            Spaces = [new() { Id = "rl-bay", Name = "Bay", ClosedBy = ["{lid}"], Kit = "box rl" }],
        };
        var car = Of(Body, Part("rl-box") with { Kit = "box rl" }) with
        { LooseEnds = [new() { Kit = "box rl", Hole = "lid", Role = "lid", Meanwhile = "", Waits = waits }] };
        var mirrored = Assert.Single(Mirror.Propose(car, Spot.RearLeft).Value.Added.LooseEnds).Waits;
        Assert.Equal(["box rr", "box rr", "box rr"],
            mirrored.Joints.Select(one => one.Kit).Concat(mirrored.SubAssemblies.Select(one => one.Kit))
                .Concat(mirrored.Spaces.Select(one => one.Kit)));
    }

    [Fact]
    public void Nothing_to_mirror_is_said() => Assert.False(Mirror.Propose(Brake.Start, Spot.Left).IsGood);
}
