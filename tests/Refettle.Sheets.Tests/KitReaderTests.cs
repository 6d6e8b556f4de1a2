using Refettle.Kits;

namespace Refettle.Sheets.Tests;

public sealed class KitReaderTests
{
    [Fact]
    public void The_example_in_the_description_is_a_kit_without_faults()
    {
        var text = File.ReadAllText(Path.Combine(Checkout.Root, "docs", "kits.md"));
        var start = text.IndexOf("```yaml", StringComparison.Ordinal) + 8;
        var kit = KitReader.Read(text[start..text.IndexOf("```", start, StringComparison.Ordinal)], "kits.md", Checkout.Shelf.Start);
        Assert.Empty(kit.Faults);
        Assert.Equal([Spot.FrontLeft, Spot.FrontRight, Spot.RearLeft, Spot.RearRight], kit.Value.Spots);
        Assert.Equal(["hub", "wheel", "pipe"], kit.Value.Holes.Select(hole => hole.Name));
        Assert.Equal(Origin.CommonPractice, kit.Value.Template.Joints[0].Ways[0].Origin);
        var offer = Assert.Single(kit.Value.WhileOpen);
        Assert.Equal(("{p}cylinder-renewed", Wish.Maybe, Origin.CommonPractice), (offer.Id, offer.Wish, offer.Origin));
        Assert.Equal([Fact.Free("{p}cylinder")], offer.Goals);
        Assert.Equal(Origin.Default, kit.Value.Template.Joints.Single(joint => joint.Id == "{p}cylinder-bolts").Ways[0].Origin);
    }

    [Fact]
    public void Offers_open_things_of_the_kit_and_fill_no_holes()
    {
        Assert.Equal(
        [
            (8, 20, "its goal reach(plenm) names nothing of this kit"), (9, 8, "goals is missing"),
            (10, 17, "{body} is neither p, side, Side, zone nor a hole of this kit"),
        ], Faults("""
            refettle-kit: 1
            kit: scuttle
            name: Scuttle
            origin: Test
            parts: { panel: }
            spaces: { plenum: { closed-by: [panel] } }
            while-open:
              coated: { goals: [reach(plenm)] }
              wax: { work: 5 min }
              hole: { name: "At {body}", goals: [off(panel)] }
            """).Select(fault => (fault.Line, fault.Column, fault.Found)));
    }

    [Fact]
    public void Faults_of_form_and_of_the_trial_stand_where_the_kit_has_them()
    {
        Assert.Equal(
        [
            (1, 1, "origin is missing"), (2, 6, "\"Bad\" cannot be an identifier"), (4, 13, "\"rx\" is not a side"),
            (6, 3, "nothing in the kit names it"), (6, 8, "role is missing"), (6, 16, "side is \"fron\""),
            (8, 31, "{weel} is neither p, side, Side, zone nor a hole of this kit"), (9, 14, "\"{p}shoo\" is not a part of this kit"),
        ], Faults("""
            refettle-kit: 1
            kit: Bad
            name: X
            sides: [rl, rx]
            holes:
              hub: { side: fron }
            parts:
              "{p}drum": { out: { clear: ["off({weel})"] } }
            joins: { a: ["{p}shoo"] }
            """).Select(fault => (fault.Line, fault.Column, fault.Found)));
        Assert.Equal(
        [
            (7, 3, "nothing in the kit names it"),
            (9, 3, "circular support that no way can break: off(rl-drum) waits for off(rl-shoe), off(rl-shoe) waits for off(rl-drum)"),
            (9, 22, "\"bot\" is not a zone that is described"), (9, 58, "\"battery-of\" is not a state that is described"),
            (12, 43, "\"rl-dram\" is not a part that is described"), (13, 3, "there is no way to open it"),
        ], Faults("""
            refettle-kit: 1
            kit: bad
            name: X
            origin: Test
            sides: [rl, rr]
            holes:
              hub: { role: hub }
            parts:
              "{p}drum": { zone: bot, out: { clear: ["off({p}shoe)", state(battery-of)] } }
              "{p}shoe": { out: { clear: ["off({p}drum)"] } }
            joints:
              "{p}seat": { kind: screw, holds: [body, "{p}dram"] }
              "{p}weld": { kind: weld, holds: [body, "{p}drum"] }
            """).Select(fault => (fault.Line, fault.Column, fault.Found)));
    }

    [Fact]
    public void The_shelf_names_the_nearest_kit_and_never_leaves_its_folder()
    {
        Assert.StartsWith("Did you mean drum-brake-corner", Checkout.Shelf.Find("drum-break-corner").Faults.Single().Mend,
            StringComparison.Ordinal);
        Assert.False(Checkout.Shelf.Find("../kits/start").IsGood);
        Assert.False(KitShelf.Load(Path.Combine(Checkout.Root, "docs")).IsGood);
    }

    private static ValueList<Fault> Faults(string text) => KitReader.Read(text, "bad.yaml", Checkout.Shelf.Start).Faults;
}
