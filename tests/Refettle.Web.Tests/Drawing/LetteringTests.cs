using Refettle.Web.Drawing;

namespace Refettle.Web.Tests.Drawing;

public sealed class LetteringTests
{
    [Theory]
    [InlineData("Rear axle off", "Rear axle off")]
    [InlineData("Rear left damper lower nut", "Rear left damper|lower nut")]
    [InlineData("Rear left damper lower nut and its long washer", "Rear left damper|lower nut and…")]
    [InlineData("Donaudampfschifffahrtsgesellschaft", "Donaudampfschifff|ahrtsgesellschaft")]
    [InlineData("", "")]
    public void Labels_break_between_words_and_end_in_an_ellipsis(string label, string lines) =>
        Assert.Equal(lines, string.Join('|', Lettering.Lines(label, 17, 2)));
}
