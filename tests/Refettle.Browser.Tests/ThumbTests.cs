namespace Refettle.Browser.Tests;

/// <summary>Boxes worked out by hand: 2 mm are 2 × 96 / 25.4 = 7.56 pixels (CSS Values and Units 3, 5.2: 1in is 96px).</summary>
public sealed class ThumbTests
{
    private static readonly Target _first = new("first", 0, 0, 50, 50, false, true);

    [Theory]
    [InlineData(57.6, 0, 0)]
    [InlineData(57, 0, 1)]
    [InlineData(0, 57, 1)]
    [InlineData(0, 57.6, 0)]
    [InlineData(55, 56, 0)]
    [InlineData(20, 20, 1)]
    public void What_is_nearer_than_2_mm_is_told_with_both(double left, double top, int faults)
    {
        var found = Thumb.Faults([_first, _first with { Says = "second", Left = left, Top = top, Right = left + 50, Bottom = top + 50 }])
            .ToArray();
        Assert.Equal(faults, found.Length);
        Assert.All(found, fault => Assert.Matches("first.*second", fault));
    }

    [Fact]
    public void What_is_small_is_told_unless_it_is_a_link_in_a_sentence_or_scrolled_half_away()
    {
        var small = _first with { Bottom = 20 };
        Assert.Single(Thumb.Faults([small]));
        Assert.Empty(Thumb.Faults([small with { IsInline = true }]));
        Assert.Empty(Thumb.Faults([small with { IsWhole = false }]));
    }
}
