using Refettle.Bench;
using Refettle.Bench.Engagement;

namespace Refettle.Tests.Bench;

public sealed class EngagementTests
{
    [Fact]
    public void A_published_example()
    {
        // A handbook of bolted joints (chapter abstract): 10.9 M10x1.5-6g in aluminium, 69 600 N, 130 MPa, d 9.968, D2 9.206: 21.6 mm.
        // Recomputed with Python: 21.551 mm, 24.8423 mm² per mm.
        const string Line = "engagement thread=M10 load=69600N shear=130MPa bolt-diameter=9.968mm nut-pitch-diameter=9.206mm";
        Ask.Printed("21.551", Ask.Value(Line));
        Ask.Near(21.6, Ask.Value(Line), 0.003);
        Ask.Printed("24.8423", ThreadEngagement.ShearAreaSquareMillimetresPerMillimetre(1.5, 9.968, 9.206));
    }

    // M10x1.5 8.8 (830 MPa) in 6061-T6, shear 186 MPa: computed with Python for two limit diameters. The published 9.4 mm uses others.
    [Theory]
    [InlineData(9.968, "10.417")]
    [InlineData(9.732, "12.049")]
    public void The_limit_diameter_decides(double bolt, string expected) => Ask.Printed(expected,
        Ask.Value($"engagement thread=M10 load={57.9896 * 830:0.###}N shear=186MPa bolt-diameter={bolt}mm nut-pitch-diameter=9.206mm"));

    // Area per mm at worst tolerance 6g/6H, computed with Python; the limit diameters are from memory of ISO 965-2.
    [Theory]
    [InlineData("M6", 1, 5.794, 5.500, "12.1909")]
    [InlineData("M8", 1.25, 7.760, 7.348, "16.8285")]
    [InlineData("M10", 1.5, 9.732, 9.206, "21.4769")]
    [InlineData("M12", 1.75, 11.701, 11.063, "26.1173")]
    public void Shear_area_per_millimetre(string thread, double pitch, double bolt, double nut, string expected)
    {
        Ask.Printed(expected, ThreadEngagement.ShearAreaSquareMillimetresPerMillimetre(pitch, bolt, nut));
        Assert.Equal(bolt, Ask.Value($"engagement thread={thread} class=8.8 shear=120MPa", "least bolt diameter used"));
    }

    [Fact]
    public void A_bolt_in_cast_aluminium()
    {
        // M8 8.8 into cast aluminium of 200 MPa (shear 120): computed 14.503 mm, 1.81 d.
        Ask.Printed("14.503", Ask.Value("engagement thread=M8 class=8.8 shear=120MPa"));
        Ask.Printed("1.81", Ask.Value("engagement thread=M8 class=8.8 shear=120MPa", "in bolt diameters"));
    }

    [Theory]
    [InlineData("engagement thread=M8 shear=120MPa", "class")]
    [InlineData("engagement thread=M14 class=8.8 shear=120MPa", "bolt-diameter")]
    [InlineData("engagement thread=M8 class=8.8 shear=120MPa bolt-diameter=8.2mm", "bolt-diameter")]
    public void What_does_not_fit_together_is_refused(string line, string place) =>
        Assert.Equal(place, Ask.Result(line).Faults.Single().Place);
}
