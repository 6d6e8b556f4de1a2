namespace Refettle.Tests;

public sealed class FactTests
{
    [Theory]
    [InlineData("off(rear-axle)", FactKind.Off, "rear-axle")]
    [InlineData(" Reach( tank-top ) ", FactKind.Reach, "tank-top")]
    public void A_fact_is_read_as_it_is_written(string text, FactKind kind, string subject)
    {
        Assert.True(Fact.TryParse(text, out var fact));
        Assert.Equal(new Fact(kind, subject), fact);
        Assert.True(Fact.TryParse(fact.ToString(), out var again));
        Assert.Equal(fact, again);
    }

    [Theory]
    [InlineData("")]
    [InlineData("off")]
    [InlineData("off()")]
    [InlineData("gone(x)")]
    [InlineData("off(Rear Axle)")]
    public void What_is_not_a_fact_is_refused(string text) => Assert.False(Fact.TryParse(text, out _));
}
