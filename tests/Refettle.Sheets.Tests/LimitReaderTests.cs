using Refettle.Kits;

namespace Refettle.Sheets.Tests;

public sealed class LimitReaderTests
{
    private const string Head = "refettle: 1\ncar: { name: Test }\n";

    [Fact]
    public void Parts_joints_and_spaces_say_their_limits_with_whose_they_are()
    {
        var car = SheetReader.Read(Head + """
            parts:
              hub: { limits: [{ what: axial play, most: 0.05 mm, origin: maker, source: manual 31-12 }, { what: run-out, least: -0.1 mm, most: 0.1 mm }] }
              arm: { limits: { what: ratio, least: 3/8 } }
            joints: { j: { kind: bolt, holds: [hub, arm], limits: { what: stretch, most: 48 N·m, origin: measured } } }
            spaces: { x: { closed-by: [arm], limits: [{ what: wall, least: 0.8 mm, origin: common-practice }] } }
            """, "x").Value.Structure;
        Assert.Equal([new("axial play", null, 0.05m, "mm", Origin.Maker, "manual 31-12"),
            new("run-out", -0.1m, 0.1m, "mm", Origin.User, null)], car.Parts[0].Limits);
        Assert.Equal([new("ratio", 0.375m, null, "", Origin.User, null)], car.Parts[1].Limits);
        Assert.Equal([new("stretch", null, 48, "N·m", Origin.Measured, null)], car.Joints[0].Limits);
        Assert.Equal([new("wall", 0.8m, null, "mm", Origin.CommonPractice, null)], car.Spaces[0].Limits);
    }

    /// <summary>1 in is 25.4 mm exactly: NIST Special Publication 811, appendix B.8.</summary>
    [Fact]
    public void Ends_in_two_units_of_one_kind_are_told_in_the_first() =>
        Assert.Equal([new("gap", 12.7m, 25.4m, "mm", Origin.User, null)],
            SheetReader.Read(Head + "parts: { a: { limits: [{ what: gap, least: 12.7 mm, most: 1 in }] } }",
                "x").Value.Structure.Parts[0].Limits);

    [Fact]
    public void All_faults_of_limits_stand_where_they_are_written()
    {
        var faults = SheetReader.Read(Head + """
            zones: { z: { limits: [] } }
            parts:
              a:
                limits:
                  - { what: play, most: 0.5 furlongs }
                  - { what: reach, least: 2 mm, most: 1 mm }
                  - { what: REACH, least: 2 mm, most: 30 kg }
                  - { most: 1 mm }
                  - { what: nothing }
                  - { what: gap, moost: 1 mm }
                  - { what: wear, most: 1 mm, origin: default }
                  - { what: wear, least: 0.1 mm }
                  - 5 mm
              b: { limits: { what: play, most: 1e999 mm, least: few } }
            """, "bad.yaml").Faults;
        Assert.Equal(
        [
            (3, 15, "\"limits\" is not a key here"), (7, 29, "most: '0.5 furlongs': the unit 'furlongs' is not known"),
            (8, 31, "the least, 2 mm, is not below the most, 1 mm"),
            (9, 17, "there is a limit for \"REACH\" already"), (9, 43, "most is in kg, least in mm"), (10, 9, "what is missing"),
            (11, 9, "neither end of the limit is given"),
            (12, 9, "neither end of the limit is given"), (12, 22, "\"moost\" is not a key here"),
            (13, 43, "a limit has to come from somewhere"),
            (14, 17, "there is a limit for \"wear\" already"), (15, 9, "a limit is not a set of keys"),
            (16, 36, "most: '1e999 mm' is not a number with a unit"), (16, 53, "least: 'few' is not a number with a unit"),
        ], faults.Select(fault => (fault.Line, fault.Column, fault.Found)).OrderBy(fault => fault));
    }

    [Fact]
    public void A_kits_limits_are_common_practice_and_are_on_every_side_it_is_added_to()
    {
        var kit = KitReader.Read("""
            refettle-kit: 1
            kit: joint
            name: Ball joint
            origin: Test
            sides: [fl, fr]
            parts: { "{p}joint": { limits: [{ what: "{Side} play", most: 1 mm, source: left column }] } }
            """, "kit", Checkout.Shelf.Start).Value;
        var left = Checkout.Shelf.Start.With(KitAddition.Propose(Checkout.Shelf.Start, kit, Spot.FrontLeft).Value.Entry.Added);
        Assert.Equal([new("Front left play", null, 1, "mm", Origin.CommonPractice, "left column")],
            left.Parts.Single(part => part.Id == "fl-joint").Limits);
        var mirrored = Mirror.Propose(left, Spot.FrontLeft).Value.Added;
        Assert.Equal([new("Front right play", null, 1, "mm", Origin.CommonPractice, "left column")], Assert.Single(mirrored.Parts).Limits);
    }

    [Fact]
    public void No_shipped_kit_says_a_limit_that_is_not_common_practice() =>
        Assert.All(Checkout.Shelf.Kits.SelectMany(kit => Limits(kit.Template)), limit => Assert.Equal(Origin.CommonPractice, limit.Origin));

    private static IEnumerable<StatedLimit> Limits(Structure structure) =>
        structure.Parts.SelectMany(part => part.Limits).Concat(structure.Joints.SelectMany(joint => joint.Limits))
            .Concat(structure.Spaces.SelectMany(space => space.Limits));
}
