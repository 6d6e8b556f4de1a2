using Refettle.Bench;

namespace Refettle.Tests.Bench;

public sealed class HeatTests
{
    // Least tempering temperatures of ISO 898-1 and SAE J429; the decision on the safe side at the limit itself.
    [Theory]
    [InlineData("M10", "8.8", 424, "keeps its class")]
    [InlineData("M10", "8.8", 425, "scrap")]
    [InlineData("M10", "10.9", 450, "scrap")]
    [InlineData("M10", "12.9", 380, "scrap")]
    [InlineData("M10", "12.9", 379, "keeps its class")]
    [InlineData("1/2-13", "5", 427, "scrap")]
    [InlineData("1/2-13", "8", 420, "keeps its class")]
    public void A_bolt_past_its_tempering_is_scrap(string thread, string grade, int reached, string verdict) =>
        Assert.Equal(verdict, Ask.Answer($"tempering thread={thread} class={grade} reached={reached}C").Verdict);

    // ISO 898-7:1992 formula; shear factors and root diameters from memory, so these rows check the arithmetic (Python, two digits).
    [Theory]
    [InlineData("M6", "12.81", "15.66", "17.44")]
    [InlineData("M7", "23.12", "28.27", "31.48")]
    [InlineData("M8", "32.55", "39.80", "44.33")]
    [InlineData("M10", "66.00", "80.69", "89.86")]
    public void Breaking_torque(string thread, string grade88, string grade109, string grade129)
    {
        Ask.Printed(grade88, Ask.Value($"breaking-torque thread={thread} class=8.8"));
        Ask.Printed(grade109, Ask.Value($"breaking-torque thread={thread} class=10.9"));
        Ask.Printed(grade129, Ask.Value($"breaking-torque thread={thread} class=12.9"));
    }

    [Fact]
    public void A_torque_above_it_is_warned_of()
    {
        Assert.Single(Ask.Answer("breaking-torque thread=M8 class=8.8 torque=40Nm").Cautions);
        Assert.Empty(Ask.Answer("breaking-torque thread=M8 class=8.8 torque=25Nm").Cautions);
        Assert.False(Ask.Result("breaking-torque thread=M12 class=8.8").IsGood);
    }

    // ISO 2320 scope: −50 to +120 °C with a non-metallic insert, to +150 °C all metal.
    [Theory]
    [InlineData("insert", 120, "within its range")]
    [InlineData("insert", 121, "scrap")]
    [InlineData("all-metal", 150, "within its range")]
    [InlineData("all-metal", 151, "scrap")]
    [InlineData("insert", -51, "scrap")]
    public void Locking_nuts(string kind, int reached, string verdict) =>
        Assert.Equal(verdict, Ask.Answer($"insert-nut kind={kind} reached={reached}C").Verdict);

    // Hardness ranges of ISO 898-1 (8.8 to 335, 10.9 to 380, 12.9 to 435 HV) against ISO 4042:1999; the mapping is an inference.
    [Theory]
    [InlineData("class=8.8", "low")]
    [InlineData("class=10.9", "concern")]
    [InlineData("class=12.9", "do not")]
    [InlineData("class=8", "concern")]
    [InlineData("hardness=320", "low")]
    [InlineData("hardness=366", "concern")]
    [InlineData("hardness=390", "do not")]
    public void Hydrogen(string input, string verdict) => Assert.Equal(verdict, Ask.Answer("hydrogen " + input).Verdict);

    // Computed: M10 nut +200 K 0.0234 mm; M8 steel bolt in aluminium, both +200 K, 0.01824 mm.
    [Theory]
    [InlineData("diameter=10mm outer-rise=200K", "0.0234")]
    [InlineData("diameter=8mm outer-rise=200K inner-rise=200K outer=aluminium", "0.01824")]
    public void Gap_by_heat(string inputs, string expected) => Ask.Printed(expected, Ask.Value("heat-gap " + inputs));

    [Fact]
    public void Heating_always_carries_the_caution_of_fire() =>
        Assert.Contains(Ask.Answer("heat-gap diameter=10mm outer-rise=200K").Cautions, caution => caution.Contains("fuel"));
}
