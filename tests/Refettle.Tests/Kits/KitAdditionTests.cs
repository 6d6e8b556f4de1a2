using Refettle.Checks;
using Refettle.Kits;
using static Refettle.Tests.Checks.Small;

namespace Refettle.Tests.Kits;

public sealed class KitAdditionTests
{
    [Fact]
    public void A_kit_needs_its_name_and_side_only()
    {
        var car = Brake.Start.Add(Brake.Hub, Spot.RearLeft).Add(Brake.Drum, Spot.RearLeft);
        var drum = car.PartOf("rl-drum");
        Assert.Equal(("Rear left drum", "corner-rl", Side.Left, "drum rl"), (drum.Name, drum.Zone, drum.Side, drum.Kit));
        Assert.Equal(["rl-drum", "rl-hub"], car.JointOf("rl-drum-seat")!.Holds);
        Assert.Equal([Fact.Off("rl-wheel"), Fact.Open("rl-drum-seat")], drum.Out.Clear);
    }

    [Fact]
    public void The_other_corner_is_not_proposed()
    {
        var car = Brake.Start.Add(Brake.Hub, Spot.RearRight).Add(Brake.Drum, Spot.RearLeft);
        Assert.Null(car.JointOf("rl-drum-seat"));
        Assert.Equal(["axle", "feed", "hub", "wheel"], car.LooseEnds.Select(end => end.Hole).Order());
    }

    [Fact]
    public void A_loose_end_knows_the_kits_that_bring_what_it_waits_for()
    {
        var hub = Brake.Start.Add(Brake.Drum, Spot.RearLeft).LooseEnds.Single(end => end.Hole == "hub");
        Assert.Equal(["hub"], Fillers.Of(hub, [Brake.Drum, Brake.Hub, Brake.Pipe]).Select(kit => kit.Id));
        Assert.Empty(Fillers.Of(hub, [Brake.Hub with { Spots = [Spot.RearRight] }]));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void The_order_of_kits_does_not_change_the_car(bool pipeFirst)
    {
        var usual = Brake.Start.Add(Brake.Pipe).Add(Brake.Hub, Spot.RearLeft).Add(Brake.Drum, Spot.RearLeft);
        var late = Brake.Start.Add(Brake.Drum, Spot.RearLeft);
        Assert.Empty(StructureCheck.Of(late));
        late = pipeFirst ? late.Add(Brake.Pipe).Add(Brake.Hub, Spot.RearLeft) : late.Add(Brake.Hub, Spot.RearLeft).Add(Brake.Pipe);
        Assert.Equal(["axle"], late.LooseEnds.Select(end => end.Hole));
        Assert.Equal(Told(usual), Told(late));
    }

    [Fact]
    public void What_waits_for_two_holes_moves_from_one_to_the_other()
    {
        var car = Brake.Start.Add(Brake.Drum, Spot.RearLeft).Add(Brake.Hub, Spot.RearLeft);
        Assert.NotNull(car.JointOf("rl-drum-seat"));
        var feed = car.LooseEnds.Single(end => end.Hole == "feed");
        Assert.Equal(["rl-hub", "{feed}"], feed.Waits.Joints.Single().Holds);
    }

    [Fact]
    public void A_condition_on_a_waiting_joint_waits_with_it()
    {
        var car = Brake.Start.Add(Brake.Drum, Spot.RearLeft);
        Assert.Empty(car.PartOf("rl-drum").Out.Clear);
        Assert.Contains(Fact.Open("rl-drum-seat"), car.Add(Brake.Hub, Spot.RearLeft).PartOf("rl-drum").Out.Clear);
    }

    [Fact]
    public void Parts_join_the_sub_assembly_of_another_kit_before_or_after()
    {
        var axle = new Kit
        {
            Id = "axle",
            Name = "Axle",
            Origin = "Test",
            Template = Of(Part("axle"), Part("tube"), Joint("welds", "axle", "tube"),
                new SubAssembly { Id = "axle-unit", Name = "Axle unit", Members = ["axle", "tube"], Roles = ["axle-unit"] }),
        };
        var before = Brake.Start.Add(axle).Add(Brake.Drum, Spot.RearLeft);
        var after = Brake.Start.Add(Brake.Drum, Spot.RearLeft).Add(axle);
        Assert.Equal(["axle", "tube", "rl-drum"], before.SubAssemblies.Single().Members);
        Assert.Equal(before.SubAssemblies, after.SubAssemblies);
    }

    /// <summary>What leaves with the rear axle is at the rear of the car.</summary>
    [Theory]
    [InlineData("rear-unit", "tube")]
    [InlineData("live-unit", "rl-pipe")]
    public void A_part_of_a_front_corner_joins_nothing_of_the_rear(string unit, string member)
    {
        var axle = new Kit
        {
            Id = "axle",
            Name = "Axle",
            Origin = "Test",
            Template = Of(Part("axle"), Part(member), Joint("welds", "axle", member),
                new SubAssembly { Id = unit, Name = "Axle unit", Members = ["axle", member], Roles = ["axle-unit"] }),
        };
        var anywhere = Brake.Drum with { Spots = [Spot.FrontLeft, Spot.RearLeft], Zone = "corner-rl" };
        Assert.Equal(["axle", member], Brake.Start.Add(axle).Add(anywhere, Spot.FrontLeft).SubAssemblies.Single().Members);
        Assert.Equal(["axle", member], Brake.Start.Add(anywhere, Spot.FrontLeft).Add(axle).SubAssemblies.Single().Members);
        Assert.Equal(["axle", member, "rl-drum"], Brake.Start.Add(axle).Add(anywhere, Spot.RearLeft).SubAssemblies.Single().Members);
    }

    [Fact]
    public void A_tie_keeps_what_was_edited_meanwhile_and_leaves_out_what_was_removed()
    {
        var car = Brake.Start.Add(Brake.Drum, Spot.RearLeft);
        car = car with { Parts = [.. car.Parts.Select(part => part.Id == "rl-drum" ? part with { Name = "My drum" } : part)] };
        car = car.Add(Brake.Hub, Spot.RearLeft);
        Assert.Equal("My drum", car.PartOf("rl-drum").Name);
        Assert.Equal(2, car.PartOf("rl-drum").Out.Clear.Count);
    }

    [Fact]
    public void A_choice_goes_before_the_proposal()
    {
        var car = Brake.Start.Add(Brake.Hub, Spot.RearLeft).Add(Brake.Drum, Spot.RearLeft, null, ("hub", "rl-wheel"), ("wheel", ""));
        Assert.Equal(["rl-drum", "rl-wheel"], car.JointOf("rl-drum-seat")!.Holds);
        Assert.Contains(car.LooseEnds, end => end.Hole == "wheel");
    }

    [Fact]
    public void A_prefix_tells_two_of_a_kind_apart_and_finds_its_own()
    {
        var car = Brake.Start.Add(Brake.Hub, Spot.RearLeft).Add(Brake.Hub, Spot.RearLeft, "spare-rl")
            .Add(Brake.Drum, Spot.RearLeft, "spare-rl-");
        Assert.Equal(["spare-rl-drum", "spare-rl-hub"], car.JointOf("spare-rl-drum-seat")!.Holds);
        Assert.Equal(("Spare rear left drum", Side.Left), (car.PartOf("spare-rl-drum").Name, car.PartOf("spare-rl-drum").Side));
    }

    [Fact]
    public void A_zone_of_the_car_stays_as_the_car_has_it()
    {
        var own = Brake.Pipe with
        { Template = Brake.Pipe.Template with { Zones = [new() { Id = "corner-rl", Name = "Other", Exposure = 0 }] } };
        Assert.Equal("Rear left", Brake.Start.Add(own).Zones.Single(zone => zone.Id == "corner-rl").Name);
    }

    [Theory]
    [InlineData(Spot.None, null, "it needs a side")]
    [InlineData(Spot.Left, null, "it has no side left")]
    [InlineData(Spot.RearLeft, "Bad prefix", "the prefix \"Bad prefix\" cannot begin an identifier")]
    [InlineData(Spot.RearLeft, null, "the car has part rl-hub already, and 3 more things of this kit")]
    public void What_cannot_be_added_says_why(Spot spot, string? prefix, string found)
    {
        var result = KitAddition.Propose(Brake.Start.Add(Brake.Hub, Spot.RearLeft), Brake.Hub, spot, prefix);
        Assert.Equal(found, Assert.Single(result.Faults).Found);
    }

    [Fact]
    public void Choices_must_name_holes_and_parts()
    {
        var result = KitAddition.Propose(Brake.Start.Add(Brake.Hub, Spot.RearLeft), Brake.Drum, Spot.RearLeft, null,
            new Dictionary<string, string> { ["hob"] = "rl-hub", ["hub"] = "rl-hab" });
        Assert.Equal(["it has no hole \"hob\"", "the car has no part or sub-assembly \"rl-hab\""],
            result.Faults.Select(fault => fault.Found));
    }

    [Fact]
    public void A_kit_that_would_wait_in_a_circle_with_the_car_is_not_added()
    {
        var car = Brake.Start.With(Of(Part("rl-wheel", Fact.Off("rl-drum")) with { Roles = ["wheel"] }, Part("rl-drum-x")));
        var result = KitAddition.Propose(car with { Parts = [.. car.Parts.Where(part => part.Id != "rl-drum-x")] }, Brake.Drum,
            Spot.RearLeft);
        Assert.False(result.IsGood);
        Assert.Contains(result.Faults, fault => fault.Found.StartsWith("circular support", StringComparison.Ordinal));
    }

    /// <summary>The structure without the order of its lists, which means nothing.</summary>
    private static string Told(Structure car) => string.Join('\n',
        car.Parts.Select(part => part with { Out = part.Out with { Clear = [.. part.Out.Clear.Order()] } }).Select(part => part.ToString())
            .Concat(car.Joints.Select(joint => joint.ToString())).Order(StringComparer.Ordinal));
}
