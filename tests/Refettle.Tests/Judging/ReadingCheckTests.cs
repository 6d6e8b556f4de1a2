using Refettle.Judging;

namespace Refettle.Tests.Judging;

/// <summary>That a thickness is a length and none is below nothing needs no source; which figures have a
/// sign: common practice, no source.</summary>
public sealed class ReadingCheckTests
{
    private static readonly Car Car = new()
    { Id = "heron", Name = "Heron", Structure = new(), Limits = [new("part drum", "bore", null, 204, "mm", Origin.Maker, null)] };

    [Theory]
    [InlineData("play", -5, "mm")]
    [InlineData("Play", 5, "kg")]
    [InlineData("bore", 204, "N·m")]
    [InlineData("tread", -5, "mm")]
    [InlineData("fluid left", -1, "L")]
    public void What_it_cannot_be_has_one_fault(string what, int value, string unit) => Assert.Single(Check(what, value, unit));

    [Theory]
    [InlineData("play", 0, "in")]
    [InlineData("bore", 8, "in")]
    [InlineData("camber", -1, "°")]
    [InlineData("toe", -2, "mm")]
    [InlineData("rim offset", -12, "mm")]
    [InlineData("frost", -8, "°C")]
    [InlineData("intake", -1, "bar")]
    [InlineData("mass", 5, "kg")]
    public void What_it_can_be_has_none(string what, int value, string unit) => Assert.Empty(Check(what, value, unit));

    private static ValueList<Fault> Check(string what, int value, string unit) =>
        ReadingCheck.Of(Car, "part drum", new(what, [value], unit, null, null));
}
