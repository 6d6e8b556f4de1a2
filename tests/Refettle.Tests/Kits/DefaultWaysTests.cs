using Refettle.Kits;

namespace Refettle.Tests.Kits;

public sealed class DefaultWaysTests
{
    [Fact]
    public void Every_kind_but_weld_and_bond_has_a_way_marked_as_default()
    {
        foreach (var kind in Enum.GetValues<JointKind>())
        {
            var ways = DefaultWays.For(kind, null, 2);
            Assert.Equal(kind is JointKind.Weld or JointKind.Bond ? 0 : 1, ways.Count);
            Assert.All(ways, way => Assert.Equal(Origin.Default, way.Origin));
        }
    }

    [Fact]
    public void More_fasteners_take_longer() =>
        Assert.True(DefaultWays.For(JointKind.Bolt, "M10", 8)[0].Open > DefaultWays.For(JointKind.Bolt, "M10", 2)[0].Open);

    /// <summary>ISO 4014 nominal widths across flats, from memory; M10, M12 and M14 are where the withdrawn DIN 931 had 17, 19 and 22 mm.
    /// Unified sizes after ASME B18.2.1, from memory.</summary>
    [Theory]
    [InlineData("M8x1.25", "13 mm")]
    [InlineData("M10", "16 mm")]
    [InlineData("m12 x 1.25", "18 mm")]
    [InlineData("3/8-16 UNC", "9/16 in")]
    [InlineData("M7.5", "")]
    [InlineData(null, "")]
    public void The_socket_follows_from_the_thread(string? thread, string size) => Assert.Equal(size, HexHeads.Size(thread));

    /// <summary>A head must be wider than its washer face; minima from ISO 4014 (dw: M6 8.88, M8 11.63, M10 14.63, M12
    /// 16.63, M14 19.64, M16 22.49 mm).</summary>
    [Theory]
    [InlineData("M6", 8.88)]
    [InlineData("M8", 11.63)]
    [InlineData("M10", 14.63)]
    [InlineData("M12", 16.63)]
    [InlineData("M14", 19.64)]
    [InlineData("M16", 22.49)]
    public void Heads_are_a_little_wider_than_their_washer_face(string thread, double face)
    {
        var across = double.Parse(HexHeads.Size(thread).Split(' ')[0]);
        Assert.InRange(across, face + 1, face + 2);
    }
}
