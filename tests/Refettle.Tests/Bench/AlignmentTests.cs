using CsCheck;
using Refettle.Bench.Alignment;

namespace Refettle.Tests.Bench;

public sealed class AlignmentTests
{
    // Geometry computed with Python; nine digits. The two axle rows are a published page's (0.420 and 0.138).
    [Theory]
    [InlineData("toe=1mm diameter=381mm of=wheel", "0.150382796")]
    [InlineData("toe=1mm diameter=406.4mm of=wheel", "0.140983852")]
    [InlineData("toe=2mm diameter=381mm of=wheel", "0.300766628")]
    [InlineData("toe=3mm diameter=406.4mm of=wheel", "0.422954970")]
    [InlineData("toe=3/8in diameter=25.6in of=axle", "0.419651")]
    [InlineData("toe=1/8in diameter=26in of=axle", "0.137730")]
    public void Toe_as_an_angle(string inputs, string degrees) => Ask.Printed(degrees, Ask.Value("toe-angle " + inputs));

    [Fact]
    public void Toe_in_minutes() => // 9.022968′, computed
        Ask.Printed("9.022968", Ask.Answer("toe-angle toe=1mm diameter=381mm of=wheel").In(Refettle.Bench.Units.ArcMinute).Values[0].Value);

    [Fact]
    public void A_quick_table_disagrees_with_geometry() => // 1 mm on 10 in is 13.534′, where one published table prints 10′
        Ask.Printed("13.534", Ask.Answer("toe-angle toe=1mm diameter=10in of=wheel").In(Refettle.Bench.Units.ArcMinute).Values[0].Value);

    [Theory]
    [InlineData("toe=0.10deg diameter=381mm of=wheel", "0.664970107")]
    [InlineData("toe=0.25deg diameter=406.4mm of=wheel", "1.773248893")]
    public void Toe_as_a_length(string inputs, string millimetres) => Ask.Printed(millimetres, Ask.Value("toe-length " + inputs));

    [Fact]
    public void Toe_turns_there_and_back() =>
        Gen.Select(Gen.Double[-50, 50], Gen.Double[200, 1200]).Sample((millimetres, diameter) =>
            Math.Abs(Toe.Millimetres(Toe.Degrees(millimetres, diameter), diameter) - millimetres) < 1e-9);

    [Fact]
    public void The_thrust_line_has_a_side()
    {
        // Left +0.20°, right 0°: total toe 0.20, line 0.10° to the right (toe-in of the left wheel turns it right).
        var answer = Ask.Answer("thrust left=0.20deg right=0deg");
        Assert.Equal((0.1, 0.2, "to the right"), (answer.Values[0].Value, answer.Values[1].Value, answer.Verdict));
        Assert.Equal(new ThrustLine(Side.Left, 0.1), Thrust.Of(0, 0.2));
        Assert.Equal(new ThrustLine(Side.None, 0), Thrust.Of(0.1, 0.1));
        Gen.Select(Gen.Double[-5, 5], Gen.Double[-5, 5]).Sample((left, right) =>
            Thrust.Of(left, right).Degrees == Thrust.Of(right, left).Degrees
                && (left == right || Thrust.Of(left, right).To != Thrust.Of(right, left).To));
    }

    [Fact]
    public void Other_angles() // computed with Python
    {
        Ask.Printed("11.75", Ask.Value("included-angle inclination=12.5deg camber=-0.75deg"));
        Ask.Printed("5.9938", Ask.Value("caster camber-difference=4.10deg steer=20deg"));
        Ask.Printed("6.0048", Ask.Value("caster camber-difference=4.10deg steer=20deg", "caster, with arcsine"));
        Ask.Printed("1.461902200", Steering.CasterDegrees(1, 20));
        Ask.Printed("2.879385242", Steering.CasterDegrees(1, 10));
        Ask.Printed("0.190985", Ask.Value("setback offset=5mm track=1500mm"));
    }
}
