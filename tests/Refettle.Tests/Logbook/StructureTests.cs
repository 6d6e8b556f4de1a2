using Refettle.Logbook;

namespace Refettle.Tests.Logbook;

/// <summary>How a description grows and shrinks with its log.</summary>
public sealed class StructureTests
{
    [Fact]
    public void What_has_the_same_identifier_is_replaced()
    {
        var heavier = new Structure { Parts = [new() { Id = "tank", Name = "Tank, long range", Mass = new(14) }] };
        var car = SmallCar.After(new StructureAdded("edit", heavier, [])).Car;
        Assert.Equal("Tank, long range", car.Structure.Parts.Single(part => part.Id == "tank").Name);
        Assert.Equal(SmallCar.Structure.Parts.Count, car.Structure.Parts.Count);
    }

    [Fact]
    public void A_part_takes_along_what_cannot_be_without_it()
    {
        var history = SmallCar.After(new StepDone(Fact.Off("tank"), null, null), new SoundnessJudged("tank", false),
            new StructureRemoved(["part tank"]));
        Assert.Equal(["joint tank-body", "space floor"], history.Lines[history.Lines.Count - 1].AlsoRemoved.Order(StringComparer.Ordinal));
        Assert.DoesNotContain(history.Car.Structure.Joints, joint => joint.Id == "tank-body");
        Assert.Empty(history.Car.Structure.Spaces);
        Assert.Empty(history.Car.Done);
        Assert.Empty(history.Car.Unsound);
    }

    [Fact]
    public void A_joint_of_three_goes_on_with_two_and_what_named_the_part_forgets_it()
    {
        var trio = new Joint { Id = "trio", Holds = ["axle", "damper", "body"], Ways = [Way([Fact.Off("wheel"), Fact.Off("tank")])] };
        var car = SmallCar.After(new StructureAdded("edit", new() { Joints = [trio] }, []),
            new StructureRemoved(["part damper", "part wheel", "zone rear"])).Car;
        var left = car.Structure.Joints.Single(joint => joint.Id == "trio");
        Assert.Equal(["axle", "body"], left.Holds);
        Assert.Equal([Fact.Off("tank")], left.Ways[0].Clear);
        Assert.Empty(car.Structure.SubAssemblies);
        Assert.All(car.Structure.Parts, part => Assert.Equal(Zone.WholeCar, part.Zone));
    }

    [Fact]
    public void What_refers_to_unknown_things_waits_until_they_are_described()
    {
        var joint = new Joint { Id = "roof-body", Holds = ["roof", "body"], Ways = [Way([])] };
        var early = SmallCar.After(new StructureAdded("edit", new() { Joints = [joint] }, []));
        Assert.DoesNotContain(early.Car.Structure.Joints, known => known.Id == "roof-body");
        Assert.Equal("joint roof-body", Assert.Single(early.Faults).Place);
        var later = SmallCar.After(
            new StructureAdded("edit", new() { Joints = [joint] }, []),
            new StructureAdded("edit", new() { Parts = [new() { Id = "roof", Name = "Roof" }] }, []));
        Assert.Contains(joint, later.Car.Structure.Joints);
        Assert.Empty(later.Faults);
    }

    [Fact]
    public void Loose_ends_come_with_a_kit_are_tied_and_go_with_it()
    {
        var kit = new Structure
        {
            Parts = [new() { Id = "exhaust", Name = "Exhaust", Kit = "exhaust" }],
            LooseEnds = [End("shield"), End("engine")],
        };
        Happening[] added = [new StructureAdded("kit exhaust", kit, []), new StructureAdded("tie", Structure.Empty, ["exhaust/shield"])];
        Assert.Equal([End("engine")], SmallCar.After(added).Car.Structure.LooseEnds);
        Assert.Empty(SmallCar.After([.. added, new StructureRemoved(["part exhaust"])]).Car.Structure.LooseEnds);
    }

    [Fact]
    public void The_order_in_which_things_are_described_means_nothing()
    {
        var backwards = SmallCar.Structure with
        {
            Parts = [.. SmallCar.Structure.Parts.Reverse()],
            Joints = [.. SmallCar.Structure.Joints.Reverse()],
        };
        var device = new TestDevice("bench");
        device.Write(SmallCar.Opening[0]);
        device.Write(new StructureAdded("sheet small.yaml", backwards, []));
        Assert.Equal(SmallCar.After().Car, device.History().Car);
    }

    private static LooseEnd End(string hole) => new() { Kit = "exhaust", Hole = hole, Role = hole, Meanwhile = "Its bracket is left out." };

    private static Way Way(ValueList<Fact> clear) => new() { Id = "spanner", Tool = "13 mm spanner", Clear = clear };
}
