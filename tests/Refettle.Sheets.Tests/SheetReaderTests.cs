using System.Text;

namespace Refettle.Sheets.Tests;

public sealed class SheetReaderTests
{
    private const string Head = "refettle: 1\ncar: { name: Test }\n";

    [Fact]
    public void The_example_in_the_description_is_read()
    {
        var text = File.ReadAllText(Path.Combine(Checkout.Root, "docs", "car-sheet.md"));
        var start = text.IndexOf("```yaml", StringComparison.Ordinal) + 8;
        var sheet = SheetReader.Read(text[start..text.IndexOf("```", start, StringComparison.Ordinal)], "car-sheet.md").Value;
        Assert.Equal(("Calder Heron 2.2", 1988, "EUR"), (sheet.Name, sheet.Year, sheet.Currency));
        var damper = sheet.Structure.Parts.Single(part => part.Id == "rear-damper");
        Assert.Equal((Scarcity.Discontinued, new Kilograms(2.1m), new Money(85), Side.Left),
            (damper.Scarcity, damper.Mass, damper.Price, damper.Side));
        Assert.Equal("jack under the axle", damper.Prop);
        Assert.Equal([Fact.Off("rear-wheel")], damper.Out.Clear);
        var joint = sheet.Structure.Joints.Single(joint => joint.Id == "rear-damper-lower");
        Assert.Equal((new NewtonMetres(60), true, true, "8.8"), (joint.Torque, joint.SingleUse, joint.AtRideHeight, joint.Grade));
        Assert.Equal(["19-mm-socket-and-spanner", "cut"], joint.Ways.Select(way => way.Id));
        Assert.Equal(["rear-damper"], joint.Ways[1].Destroys);
        Assert.Equal(Origin.User, joint.Ways[0].Origin);
        Assert.Equal(Origin.Default, sheet.Structure.Joints.Single(mounts => mounts.Id == "rear-axle-mounts").Ways.Single().Origin);
        Assert.True(sheet.Structure.States.Single(state => state.Id == "on-stands").IsStance);
    }

    [Fact]
    public void All_faults_are_reported_at_once_in_the_order_of_the_file()
    {
        var faults = SheetReader.Read("""
            refettle: 1
            car: { name: Test, year: 88, currency: Euro }
            parts:
              tank: { name: Tank, mass: 40, zone: reer, sid: left }
              pump: { out: { off: 3, clear: [off(tink), gone] } }
              tank: { name: Again }
            joints:
              ring: { kind: bult, holds: [pump, tank], torque: 45 ft, count: two }
              seam: { kind: weld, holds: [pump] }
              none: { kind: bolt, holds: [pump, tank], ways: [] }
              half: { kind: bolt, holds: [pump, tank], ways: [{ tool: spanner, open: -3 min }] }
            spaces:
            """, "bad.yaml").Faults;
        Assert.Equal(
        [
            (2, 26, "the year is 88"), (2, 40, "the currency is \"Euro\""), (4, 29, "mass: \"40\" has no unit"),
            (4, 39, "\"reer\" is not a zone that is described"), (4, 45, "\"sid\" is not a key here"),
            (5, 23, "off: \"3\" has no unit"), (5, 34, "\"tink\" is not a part or sub-assembly that is described"),
            (5, 45, "\"gone\" is not a fact"),
            (6, 3, "\"tank\" is here already, on line 4"), (8, 17, "kind is \"bult\""), (8, 52, "torque: \"ft\" is not a unit of torque"),
            (8, 66, "count is \"two\", which is not a number"), (9, 3, "there is no way to open it"), (9, 30, "it holds 1 part"),
            (10, 50, "there is no way to open it"), (11, 51, "close is missing"), (11, 74, "ways[0].open is -3 min"),
        ], faults.Select(fault => (fault.Line, fault.Column, fault.Found)));
        Assert.All(faults, fault => Assert.Equal("bad.yaml", fault.File));
    }

    [Theory]
    [InlineData("parts: { tank: { scarcity: rare } }", "Known are stocked, used-only, discontinued, unique.")]
    [InlineData("joints: { strap: { kind: bolt, holds: [tank, body], tool: saw, open: 3 min, close: 3 min, danger: none } }",
        "Known are heat, flame, spark, cutting.")]
    [InlineData("joints: { strap: { kind: bolt, holds: [tank, body], tool: saw, open: 3 min, close: 3 min, danger: [heat, fire] } }",
        "Known are heat, flame, spark, cutting.")]
    [InlineData("parts: { tank: { mass: 40 } }", "Write it like 2.1 kg or 300 g.")]
    [InlineData("parts: { tank: { mass: '2,5 kg' } }", "Write it like 2.1 kg or 300 g, with a decimal point.")]
    [InlineData("parts: { tank: { naem: x } }", "Did you mean name?")]
    [InlineData("parts: { tank: { out: { refit: { tool: helper } } } }", "Write takes: 12 min.")]
    [InlineData("parts: { tank: { out: { refit: helper } } }", "Write refit: with keys below it, or { key: value }.")]
    [InlineData("parts: { tank: { out: { refit: { takes: 3 min, close: 3 min } } } }",
        "Known are takes, tool, clear, posture, cautions, danger, origin.")]
    [InlineData("parts: { tank: { out: { refit: { takes: 3 min, clear: off(tnk) } } } }", "Did you mean tank?")]
    [InlineData("parts: [ tank ]", "Write parts: with keys below it, or { key: value }.")]
    [InlineData("parts: { tank: 7 }", "Write keys below it, or { name: … }.")]
    [InlineData("parts: { Tank A: {} }",
        "Use small letters, digits, - _ and . only, beginning with a letter or digit, at most 80 long: \"tank-a\".")]
    public void A_fault_says_what_would_be_right(string body, string mend) =>
        Assert.Contains(SheetReader.Read(Head + body, "x.yaml").Faults, fault => fault.Mend == mend && fault.Line == 3);

    [Theory]
    [InlineData("6 min", 6)]
    [InlineData("1.5 h", 90)]
    [InlineData("30s", 0.5)]
    public void Times_carry_units(string time, double minutes) =>
        Assert.Equal((decimal)minutes, Part($"out: {{ off: {time} }}").Out.Off.Value);

    /// <summary>NIST Special Publication 811, appendix B.8: 1 lbf·ft = 1.355 818 N·m, 1 kgf·m = 9.806 65 N·m.</summary>
    [Theory]
    [InlineData("60 N·m", 60)]
    [InlineData("60 Nm", 60)]
    [InlineData("100 lbf·ft", 135.5818)]
    [InlineData("2 kgf·m", 19.6133)]
    public void Torques_carry_units(string torque, double newtonMetres)
    {
        var sheet = SheetReader.Read(
            $"{Head}parts: {{ a: {{}}, b: {{}} }}\njoints: {{ j: {{ kind: bolt, holds: [a, b], torque: {torque} }} }}", "x").Value;
        Assert.Equal((decimal)newtonMetres, sheet.Structure.Joints.Single().Torque!.Value.Value);
    }

    [Fact]
    public void The_keys_of_one_way_may_stand_in_the_joint()
    {
        var sheet = SheetReader.Read(Head
            + "parts: { a: {}, b: {} }\njoints: { j: { kind: clip, holds: [a, b], tool: lever, open: 2 min, close: 1 min } }", "x").Value;
        var way = sheet.Structure.Joints.Single().Ways.Single();
        Assert.Equal(("lever", "lever", new Minutes(2), new Minutes(1)), (way.Id, way.Tool, way.Open, way.Close));
    }

    [Fact]
    public void A_missing_head_and_an_unknown_version_are_faults()
    {
        Assert.Equal(["refettle is missing", "car is missing"], SheetReader.Read("parts: {}", "x").Faults.Select(fault => fault.Found));
        Assert.Equal("the format has version 2", SheetReader.Read("refettle: 2\ncar: { name: x }", "x").Faults.Single().Found);
    }

    [Fact]
    public void Bytes_in_utf_8_are_read_with_and_without_mark()
    {
        var text = Head + "parts: { a: { name: Kühler } }";
        Assert.Equal("Kühler", SheetReader.Read(Encoding.UTF8.GetBytes(text), "x").Value.Structure.Parts.Single().Name);
        Assert.True(SheetReader.Read([.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes(text)], "x").IsGood);
    }

    private static Part Part(string keys) => SheetReader.Read($"{Head}parts: {{ p: {{ {keys} }} }}", "x").Value.Structure.Parts.Single();
}
