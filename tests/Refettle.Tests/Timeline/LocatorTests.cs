using CsCheck;
using Refettle.Timeline.Scheduling;

namespace Refettle.Tests.Timeline;

public sealed class LocatorTests
{
    /// <summary>Against the base library's binary search.</summary>
    [Fact]
    public void It_finds_what_a_binary_search_finds() =>
        Gen.Select(Gen.Int[-1_000_000, 1_000_000].HashSet[0, 60], Gen.Int[-1_100_000, 1_100_000].Array[1, 40]).Sample((some, asked) =>
        {
            int[] values = [.. some.Order()];
            var locator = new Locator(values);
            foreach (var value in asked.Concat(values).Concat(values.Select(one => one - 1)))
            {
                var found = Array.BinarySearch(values, value);
                Assert.Equal(found >= 0 ? found : ~found - 1, locator.LastAtOrBefore(value));
            }
        });

    [Fact]
    public void Close_values_after_a_wide_gap_are_told_apart() =>
        Assert.Equal([-1, 0, 0, 1, 2, 3, 3], new[] { -5, 0, 999_999_999, 1_000_000_000, 1_000_000_001, 1_000_000_002, int.MaxValue }
        .Select(new Locator([0, 1_000_000_000, 1_000_000_001, 1_000_000_002]).LastAtOrBefore));
}
