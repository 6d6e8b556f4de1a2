using Refettle.Web.Find;

namespace Refettle.Web.Tests.Find;

public sealed class FinderTests
{
    private static readonly Findable[] _things =
    [
        new("a", "Rear axle", "rear-axle Rear underbody axle"),
        new("b", "Rear left leaf spring", "rl-leaf Rear underbody spring"),
        new("c", "Floor above the axle", "axle-top", Rank: 1),
        new("d", "Nut: Rear axle – Body", "axle-nut", Rank: 2),
        new("e", "Front left coil spring", "fl-coil Front spring"),
    ];

    [Theory]
    [InlineData("axle", "acd")]
    [InlineData("rear spr", "b")]
    [InlineData("SPRING left", "be")]
    [InlineData("rl leaf", "b")]
    [InlineData("xle", "acd")]
    [InlineData("gearbox", "")]
    [InlineData("  ", "abcde")]
    public void Every_word_must_be_found_and_the_nearest_comes_first(string typed, string keys) =>
        Assert.Equal(keys, string.Concat(Finder.Find(_things, typed, 10).Select(thing => thing.Key)));
}
