using CsCheck;
using Refettle.CloseUp;

namespace Refettle.Tests.CloseUp;

public sealed class TighteningSequenceTests
{
    // Four, five and six: wheel nuts, common practice, no source. Eight and sixteen: legacy cross pattern of ASME PCC-1, from memory.
    [Theory]
    [InlineData(1, "1")]
    [InlineData(2, "1 2")]
    [InlineData(3, "1 2 3")]
    [InlineData(4, "1 3 2 4")]
    [InlineData(5, "1 3 5 2 4")]
    [InlineData(6, "1 4 6 3 5 2")]
    [InlineData(8, "1 5 3 7 2 6 4 8")]
    [InlineData(16, "1 9 5 13 3 11 7 15 2 10 6 14 4 12 8 16")]
    public void Stars(int count, string order) => Assert.Equal(order, string.Join(' ', TighteningSequence.Star(count)));

    // Cylinder heads of 2 × 5: the middle pair first, the ends last; common practice, no source.
    [Theory]
    [InlineData(1, 5, "3 2 4 1 5")]
    [InlineData(2, 5, "3 8 2 9 4 7 1 10 5 6")]
    [InlineData(2, 2, "1 4 2 3")]
    [InlineData(3, 3, "5 1 9 2 8 3 7 4 6")]
    public void Spirals(int rows, int columns, string order) =>
        Assert.Equal(order, string.Join(' ', TighteningSequence.Spiral(rows, columns)));

    [Fact]
    public void Every_place_comes_once() => Gen.Select(Gen.Int[1, 14], Gen.Int[1, 14]).Sample((rows, columns) =>
        TighteningSequence.Star(rows * columns).Order().SequenceEqual(Enumerable.Range(1, rows * columns))
        && TighteningSequence.Spiral(rows, columns).Order().SequenceEqual(Enumerable.Range(1, rows * columns)));

    [Fact]
    public void After_each_pair_of_an_even_star_the_clamp_is_balanced() => Gen.Int[1, 60].Sample(half =>
    {
        var order = TighteningSequence.Star(2 * half);
        return Enumerable.Range(0, half).All(pair => Math.Abs(order[2 * pair + 1] - order[2 * pair]) == half);
    });

    [Fact]
    public void In_a_star_of_five_or_more_neighbours_never_follow_each_other() => Gen.Int[5, 100].Sample(count =>
    {
        var order = TighteningSequence.Star(count);
        return order.Zip(order.Skip(1))
            .All(pair => Math.Abs(pair.First - pair.Second) is not 1 && Math.Abs(pair.First - pair.Second) != count - 1);
    });

    [Fact]
    public void A_spiral_never_goes_back_inward() => Gen.Select(Gen.Int[1, 10], Gen.Int[1, 10]).Sample((rows, columns) =>
    {
        int Ring(int place) => Math.Max(
            Math.Abs(2 * ((place - 1) / columns) - (rows - 1)), Math.Abs(2 * ((place - 1) % columns) - (columns - 1)));
        var rings = TighteningSequence.Spiral(rows, columns).Select(Ring).ToList();
        return rings.SequenceEqual(rings.Order());
    });
}
