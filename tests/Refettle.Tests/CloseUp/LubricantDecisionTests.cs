using Refettle.CloseUp;

namespace Refettle.Tests.CloseUp;

public sealed class LubricantDecisionTests
{
    // The decision table: rows what the figure is for, columns how it is fitted (not said, dry, oiled, anti-seize, threadlocker).
    // S as stated, C corrected, F fit as stated, ? ask. Our own rule, stated in the class.
    [Theory]
    [InlineData(ThreadCondition.NotSaid, Origin.Maker, "? S ? ? ?")]
    [InlineData(ThreadCondition.Dry, Origin.Maker, "? S C C ?")]
    [InlineData(ThreadCondition.Oiled, Origin.Maker, "? F S ? ?")]
    [InlineData(ThreadCondition.AntiSeize, Origin.Maker, "? F ? S ?")]
    [InlineData(ThreadCondition.Threadlocker, Origin.Maker, "? F ? ? S")]
    [InlineData(ThreadCondition.NotSaid, Origin.User, "? S ? ? ?")]
    [InlineData(ThreadCondition.Dry, Origin.User, "? S C C ?")]
    [InlineData(ThreadCondition.Oiled, Origin.User, "? F S C ?")]
    [InlineData(ThreadCondition.AntiSeize, Origin.User, "? F C S ?")]
    [InlineData(ThreadCondition.Threadlocker, Origin.User, "? F ? ? S")]
    public void Table(ThreadCondition statedFor, Origin origin, string row)
    {
        var advice = Enum.GetValues<ThreadCondition>().Select(fitted => LubricantDecision.Of(new(48), origin, statedFor, fitted)).ToList();
        Assert.Equal(row,
            string.Join(' ',
                advice.Select(one => one.Use switch
                {
                    TorqueUse.AsStated => "S",
                    TorqueUse.Corrected => "C",
                    TorqueUse.FitAsStated => "F",
                    _ => "?"
                })));
        Assert.All(advice, one => Assert.Equal(one.Use == TorqueUse.Ask, one.Torque is null));
        Assert.All(advice.Where(one => one.Use == TorqueUse.Ask), one => Assert.EndsWith("?", one.Says));
    }

    [Fact]
    public void A_makers_figure_for_a_lubricated_thread_is_never_changed() =>
        Assert.All(Enum.GetValues<ThreadCondition>(), fitted => Assert.All(
            new[] { ThreadCondition.Oiled, ThreadCondition.AntiSeize, ThreadCondition.Threadlocker },
            statedFor => Assert.True(LubricantDecision.Of(new(48), Origin.Maker, statedFor, fitted).Torque is null or { Value: 48 })));

    [Fact]
    public void A_correction_shows_both_figures() // 48 N·m dry, K 0.20, with anti-seize K 0.12: 28.8 N·m (Shigley table 8-15)
    {
        var advice = LubricantDecision.Of(new(48), Origin.Maker, ThreadCondition.Dry, ThreadCondition.AntiSeize);
        Assert.Equal(28.8m, advice.Torque!.Value.Value);
        Assert.Contains("28.8 N·m instead of 48 N·m", advice.Says);
    }
}
