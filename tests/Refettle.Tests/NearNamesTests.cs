namespace Refettle.Tests;

public sealed class NearNamesTests
{
    private static readonly string[] Names =
        ["rear-axle", "rear-damper", "fuel-tank", "rl-drum", "rr-drum", "rl-shackle-upper", "rl-shackle-lower"];

    [Theory]
    [InlineData("raer-axle", "rear-axle")]
    [InlineData("rear-axel", "rear-axle")]
    [InlineData("REAR-AXLE", "rear-axle")]
    [InlineData("tank", "fuel-tank")]
    [InlineData("drum", "rl-drum")]
    public void A_slip_of_the_keys_is_understood(string written, string meant) => Assert.Equal(meant, NearNames.Of(written, Names)[0]);

    /// <summary>He says its words as they come to him.</summary>
    [Theory]
    [InlineData("rl-upper-shackle")]
    [InlineData("rl-upper-shackle-bolt")]
    [InlineData("Upper shackle")]
    public void Words_are_found_in_any_order(string written) => Assert.Equal(["rl-shackle-upper"], NearNames.Of(written, Names));

    [Fact]
    public void What_is_near_nothing_gets_the_other_answer() => Assert.Equal("None.", NearNames.Ask("gearbox", Names, "None."));

    [Fact]
    public void Several_are_asked_for_in_one_sentence() =>
        Assert.Equal("Did you mean rl-drum or rr-drum?", NearNames.Ask("drum", Names, ""));
}
