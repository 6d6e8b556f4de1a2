using Refettle.Web.Drawing;

namespace Refettle.Web.Tests.Drawing;

public sealed class OrderingTests
{
    /// <summary>By hand: 0→4, 1→3, 2→5 in the order given cross once; swapping 3 and 4 crosses never.</summary>
    [Fact]
    public void Crossings_that_can_be_avoided_are()
    {
        var layering = new Layering(new(6, [new(0, 4), new(1, 3), new(2, 5)]));
        Assert.Equal(1, Ordering.Crossings(layering, [[0, 1, 2], [3, 4, 5]]));
        Assert.Equal(0, Ordering.Crossings(layering, Ordering.Of(layering)));
    }

    /// <summary>Each of two sources leads to each of two sinks: one crossing remains in any order.</summary>
    [Fact]
    public void A_crossing_that_cannot_be_avoided_remains()
    {
        var layering = new Layering(new(4, [new(0, 2), new(0, 3), new(1, 2), new(1, 3)]));
        Assert.Equal(1, Ordering.Crossings(layering, Ordering.Of(layering)));
    }

    [Fact]
    public void A_step_stands_just_before_what_waits_for_it()
    {
        var layering = new Layering(new(4, [new(0, 1), new(1, 3), new(2, 3)]));
        Assert.Equal([0, 1, 1, 2], layering.Slots.Select(slot => slot.Layer));
    }
}
