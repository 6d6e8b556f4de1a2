using Refettle.CloseUp;
using Refettle.Logbook;

namespace Refettle.Tests.CloseUp;

public sealed class LedgerTests
{
    private static readonly Car Estate = new()
    {
        Id = "estate",
        Name = "Calder Heron 2.2",
        Structure = new()
        {
            Parts =
            [
                new() { Id = "body", Name = "Body", Fixed = true }, new() { Id = "axle", Name = "Axle" },
                new() { Id = "cover", Name = "Cover" },
                new() { Id = "sender", Name = "Sender", Out = new() { Clear = [Fact.Reach("tank-top")] } },
            ],
            Joints =
            [
                Bush("link-front"), Bush("link-rear"), Bush("damper-foot"),
                new()
                {
                    Id = "sender-ring", Holds = ["sender", "body"], Count = 6, SingleUse = true, Thread = "M5",
                    Ways = [new() { Id = "hands", Tool = "hands", Clear = [Fact.Reach("tank-top")] }],
                },
                new()
                {
                    Id = "cover-screws", Holds = ["cover", "body"], Count = 4,
                    Ways = [new() { Id = "hands", Tool = "hands" },
                        new() { Id = "inside", Tool = "hands", Clear = [Fact.Reach("tank-top")] }],
                },
            ],
            Spaces = [new() { Id = "tank-top", Name = "Floor above the tank", ClosedBy = ["cover"] }],
        },
    };

    [Fact]
    public void A_bush_is_settled_only_when_torqued_on_its_wheels()
    {
        var ledger = RideHeightLedger.Of(Estate with { Done = [Fact.Open("damper-foot")] }, ["link-front", "link-rear", "cover-screws"],
            [new("link-front", Tightness.Snug, "on-stands"), new("link-rear", Tightness.Torqued, "on-stands", new(60)),
                new("damper-foot", Tightness.Torqued, "on-wheels")]);
        Assert.Equal(
            [("link-front", RideHeightStanding.Snug), ("link-rear", RideHeightStanding.TorquedHanging),
                ("damper-foot", RideHeightStanding.Open)],
            ledger.Select(line => (line.Joint.Id, line.Standing)));
    }

    [Theory]
    [InlineData("at-ride-height", RideHeightStanding.Settled)]
    [InlineData("on-wheels", RideHeightStanding.Settled)]
    [InlineData("on-stands", RideHeightStanding.TorquedHanging)]
    [InlineData("not-rolling", RideHeightStanding.TorquedHanging)]
    [InlineData(null, RideHeightStanding.TorquedHanging)]
    public void The_stance_decides(string? stance, RideHeightStanding standing) =>
        Assert.Equal(standing,
            RideHeightLedger.Of(Estate, ["link-front"],
                [new("link-front", Tightness.Snug, stance), new("link-front", Tightness.Torqued, stance)]).Single().Standing);

    [Fact]
    public void A_bush_that_was_never_opened_is_not_listed() => Assert.Empty(RideHeightLedger.Of(Estate, [], []));

    /// <summary>Who begins the log with the car half together tightens what the log never had open.</summary>
    [Fact]
    public void What_is_snug_only_blocks_the_road_whether_or_not_the_log_opened_it()
    {
        var ledger = RideHeightLedger.Of(Estate, [],
            [new("link-front", Tightness.Snug, "on-stands"), new("cover-screws", Tightness.Snug, "on-stands"),
                new("link-rear", Tightness.Torqued, "on-stands")]);
        Assert.Equal(
            [("joint link-front", "snug only: torque it at ride height"),
                ("joint link-rear", "torqued with the wheels hanging: loosen it and torque it at ride height"),
                ("joint cover-screws", "snug only: torque it")],
            RoadReadiness.Of(Estate, ledger, []).Select(block => (block.Thing, block.Why)));
        Assert.Empty(
            RideHeightLedger.Of(Estate, [], [new("cover-screws", Tightness.Snug, null), new("cover-screws", Tightness.Torqued, null)]));
        Assert.Empty(
            RideHeightLedger.Of(Estate with { Done = [Fact.Open("cover-screws")] }, [], [new("cover-screws", Tightness.Snug, null)]));
    }

    /// <summary>Wheel nuts are told apart from the screws of a cover by what they hold, not by name.</summary>
    [Fact]
    public void What_carries_the_car_and_was_closed_without_a_torque_blocks_the_road()
    {
        var wheel = new Part { Id = "wheel", Name = "Wheel", Roles = ["wheel"] };
        var nuts = new Joint { Id = "nuts", Holds = ["wheel", "axle"], Thread = "M12x1.5", Ways = [] };
        var car = Estate with
        {
            Structure = Estate.Structure with
            { Parts = [.. Estate.Structure.Parts, wheel], Joints = [.. Estate.Structure.Joints, nuts] }
        };
        var ledger = RideHeightLedger.Of(car, ["nuts", "cover-screws", "sender-ring"], []);
        Assert.Equal(("joint nuts", "closed, but nobody recorded its torque"),
            RoadReadiness.Of(car, ledger, []).Select(block => (block.Thing, block.Why)).Single());
        Assert.Empty(RideHeightLedger.Of(car, ["nuts"], [new("nuts", Tightness.Torqued, "on-stands")]));
        Assert.Empty(RideHeightLedger.Of(car, [], []));
    }

    [Fact]
    public void A_bush_closed_without_a_word_blocks_the_road()
    {
        var ledger = RideHeightLedger.Of(Estate, ["link-front"], []);
        Assert.Equal(RideHeightStanding.Unknown, ledger.Single().Standing);
        Assert.Equal("joint link-front", RoadReadiness.Of(Estate, ledger, []).Single().Thing);
        Assert.Empty(RoadReadiness.Of(Estate,
            RideHeightLedger.Of(Estate, ["link-front"], [new("link-front", Tightness.Torqued, "at-ride-height")]), []));
    }

    [Fact]
    public void What_is_open_off_or_unsound_blocks_the_road_unless_left_off_on_purpose()
    {
        var car = Estate with
        {
            Done = [Fact.Off("cover"), Fact.Open("cover-screws"), Fact.Open("link-front"), Fact.State("battery-off"),
                Fact.Reach("tank-top")],
            Unsound = ["axle"]
        };
        var ledger = RideHeightLedger.Of(car, [], []);
        Assert.Equal(
            ["part cover", "joint cover-screws", "joint link-front", "state battery-off", "part axle"],
            RoadReadiness.Of(car, ledger, []).Select(block => block.Thing));
        Assert.Equal(["joint link-front", "state battery-off", "part axle"],
            RoadReadiness.Of(car, ledger, ["part cover", "joint cover-screws"]).Select(block => block.Thing));
    }

    [Fact]
    public void What_stays_off_says_nothing_of_another_thing_with_its_name()
    {
        var car = Estate with
        { Structure = Estate.Structure with { Joints = [Bush("cover")] }, Done = [Fact.Off("cover"), Fact.Open("cover")] };
        Assert.Equal(["joint cover"], RoadReadiness.Of(car, [], ["part cover"]).Select(block => block.Thing));
    }

    [Fact]
    public void What_came_off_as_one_is_told_by_its_parts()
    {
        var car = Estate with
        {
            Structure = Estate.Structure with { SubAssemblies = [new() { Id = "floor", Name = "Floor", Members = ["cover", "sender"] }] },
            Done = [Fact.Off("floor"), Fact.Off("cover"), Fact.Off("sender")]
        };
        Assert.Equal(["part cover", "part sender"], RoadReadiness.Of(car, [], []).Select(block => block.Thing));
    }

    [Fact]
    public void Heights_are_asked_for_before_the_first_bush_is_opened()
    {
        Assert.Equal(["fl", "fr", "rl", "rr"], RideHeightLedger.AskBefore(Estate, Fact.Open("link-front"), []));
        Assert.Equal(["rr"], RideHeightLedger.AskBefore(Estate, Fact.Open("link-front"), ["fl", "fr", "rl"]));
        Assert.Empty(RideHeightLedger.AskBefore(Estate, Fact.Open("cover-screws"), []));
        Assert.Empty(RideHeightLedger.AskBefore(Estate, Fact.Off("axle"), []));
    }

    [Fact]
    public void A_space_is_closed_when_all_within_is_done()
    {
        Assert.Empty(LastLook.Of(Estate with { Done = [Fact.Open("cover-screws")] }, "tank-top").Value);
        Assert.Equal([Fact.Open("sender-ring"), Fact.Off("sender")],
            LastLook.Of(Estate with { Done = [Fact.Off("sender"), Fact.Open("sender-ring"), Fact.Open("cover-screws"), Fact.Off("cover")] },
                "tank-top").Value);
        Assert.Contains("tank-top", LastLook.Of(Estate, "tanktop").Faults.Single().Mend);
    }

    /// <summary>Kits do not say <c>reach(space)</c> but what has to be off; springs say nothing and hang behind all the same.</summary>
    [Fact]
    public void What_lies_behind_the_part_that_closes_a_space_is_looked_at_too()
    {
        var brake = new Structure
        {
            Parts =
            [
                new() { Id = "arm", Name = "Arm", Fixed = true }, new() { Id = "wheel", Name = "Wheel" },
                new() { Id = "drum", Name = "Drum", Out = new() { Clear = [Fact.Off("wheel")] } },
                new() { Id = "shoe", Name = "Shoe", Out = new() { Clear = [Fact.Off("drum")] } },
                new() { Id = "springs", Name = "Springs" },
                new() { Id = "cylinder", Name = "Cylinder", Out = new() { Clear = [Fact.Free("drum")] } },
                new() { Id = "pipe", Name = "Pipe" },
            ],
            Joints =
            [
                Held("wheel-nuts", ["wheel", "arm"]), Held("drum-seat", ["drum", "arm"], Fact.Off("wheel")),
                Held("hook", ["springs", "shoe"], Fact.Off("drum")),
                Held("pin", ["shoe", "arm"], Fact.Open("hook")), Held("union", ["cylinder", "pipe"]), Held("clip", ["pipe", "arm"]),
            ],
            Spaces = [new() { Id = "behind-drum", Name = "Behind the drum", ClosedBy = ["drum"] }],
        };
        var car = Estate with
        {
            Structure = brake,
            Done = [Fact.Off("wheel"), Fact.Off("drum"), Fact.Off("shoe"), Fact.Off("springs"),
                .. brake.Joints.Select(joint => Fact.Open(joint.Id))],
        };
        Assert.Equal([Fact.Open("hook"), Fact.Open("pin"), Fact.Off("shoe"), Fact.Off("springs")], LastLook.Of(car, "behind-drum").Value);
        Assert.Equal([Fact.Open("union")], LastLook.Beside(car, "behind-drum"));
    }

    /// <summary>The membrane goes on before the trim, and is no work in the door.</summary>
    [Fact]
    public void What_closes_a_space_in_layers_is_no_work_inside_it()
    {
        var door = new Structure
        {
            Parts = [new() { Id = "door", Name = "Door", Fixed = true }, new() { Id = "trim", Name = "Trim" },
                new() { Id = "membrane", Name = "Membrane", Out = new() { Clear = [Fact.Off("trim")] } },
                new() { Id = "glass", Name = "Glass" }],
            Joints = [Held("clips", ["trim", "door"]), Held("glue", ["membrane", "door"], Fact.Off("trim")),
                Held("rail", ["glass", "door"], Fact.Off("membrane"))],
            Spaces = [new() { Id = "inside", Name = "Inside", ClosedBy = ["trim", "membrane"] }],
        };
        var car = Estate with
        {
            Structure = door,
            Done = [.. door.Parts.Skip(1).Select(part => Fact.Off(part.Id)), .. door.Joints.Select(joint => Fact.Open(joint.Id))]
        };
        Assert.Equal([Fact.Open("rail"), Fact.Off("glass")], LastLook.Of(car, "inside").Value);
    }

    [Fact]
    public void Single_use_fasteners_of_opened_joints_are_needed_new()
    {
        Assert.Equal(("sender-ring", 6),
            NewFasteners.Of(Estate, ["sender-ring", "link-front"]).Select(one => (one.Joint.Id, one.Count)).Single());
        Assert.Single(NewFasteners.Of(Estate with { Done = [Fact.Open("sender-ring")] }, []));
        Assert.Empty(NewFasteners.Of(Estate, ["link-front"]));
    }

    [Fact]
    public void Without_a_figure_a_general_range_says_that_it_is_one()
    {
        var range = GeneralTorque.Of(Bush("x") with { Thread = "M10", Grade = "8.8" }).Value;
        // 75 % of 58 mm² · 580 MPa, times 10 mm, times 0.15 and 0.20: by hand 37.8 and 50.5 N·m.
        Assert.Equal((37.8m, 50.5m), (range.Low.Value, range.High.Value));
        Assert.Contains("general range", GeneralTorque.Says);
        Assert.False(GeneralTorque.Of(Bush("x")).IsGood);
        Assert.False(GeneralTorque.Of(Bush("x") with { Thread = "M10", Grade = "soft" }).IsGood);
        Assert.False(GeneralTorque.Of(Bush("x") with { Thread = "M11", Grade = "8.8" }).IsGood);
    }

    private static Joint Held(string id, ValueList<string> holds, params ValueList<Fact> clear) =>
        new() { Id = id, Holds = holds, Ways = [new() { Id = "hands", Tool = "hands", Clear = clear }] };

    private static Joint Bush(string id) =>
        new() { Id = id, Holds = ["axle", "body"], AtRideHeight = true, Ways = [new() { Id = "spanner", Tool = "spanner" }] };
}
