using Refettle.CloseUp;
using Refettle.CloseUp.Refit;
using Refettle.Logbook;
using Refettle.Web.CloseUp;

namespace Refettle.Web.Tests.CloseUp;

public sealed class ClosingStepTests
{
    private static readonly Joint Bolt = new()
    {
        Id = "link-bolt",
        Holds = ["link", "body"],
        Count = 2,
        Torque = new(90),
        Origin = Origin.Maker,
        SingleUse = true,
        Ways = [new() { Id = "spanner", Tool = "spanner" }],
    };

    [Fact]
    public void A_bolt_asks_for_its_torque_and_marks_it()
    {
        var step = Of(Bolt);
        Assert.True(step.WantsTorque);
        Assert.Equal(["90 N·m, the maker's figure", "2 new"], step.Tight().Take(2));
        Assert.Equal([new StepReversed(Fact.Open("link-bolt"), null),
            new JointTightened("link-bolt", Tightness.Torqued, new(88), null, null)], step.Marked(new NewtonMetres(88)));
        Assert.Equal([new StepReversed(Fact.Open("link-bolt"), null)], step.Marked(null));
        Assert.Equal([TighteningCheck.PaintMark],
            Assert.IsType<JointTightened>(step.Marked(new NewtonMetres(88), TighteningCheck.PaintMark)[1]).Checks!);
    }

    [Fact]
    public void A_bonded_bush_is_only_snugged()
    {
        var step = Of(Bolt with { AtRideHeight = true });
        Assert.Equal((false, "Closed, snug"), (step.WantsTorque, step.Marks));
        Assert.Contains(new JointTightened("link-bolt", Tightness.Snug, null, null, null), step.Marked(new NewtonMetres(88)));
    }

    [Fact]
    public void A_part_goes_on_and_a_stance_is_taken()
    {
        Assert.Equal([new StepReversed(Fact.Off("axle"), null)], new ClosingStep(Step(Fact.Off("axle"), null, null)).Marked(null));
        Assert.Equal([new StanceTaken("on-stands")], new ClosingStep(Step(Fact.State("on-stands"), null, "on-stands")).Marked(null));
    }

    [Theory]
    [InlineData("", true, null)]
    [InlineData(" 48,5 ", true, 48.5)]
    [InlineData("0", false, null)]
    [InlineData("-3", false, null)]
    [InlineData("48 Nm", false, null)]
    [InlineData("1e3", false, null)]
    public void A_torque_is_read_as_it_is_typed(string text, bool good, double? torque)
    {
        var read = TorqueText.Read(text);
        Assert.Equal((good, (decimal?)torque), (read.IsGood, read.IsGood ? read.Value?.Value : null));
    }

    private static ClosingStep Of(Joint joint) =>
        new(Step(Fact.Open(joint.Id), ClosingCard.Of(joint, ThreadCondition.NotSaid, ThreadCondition.NotSaid, null).Value, null));

    private static RefitStep Step(Fact fact, ClosingCard? card, string? stance) =>
        new(fact, "Says", Side.None, "rear", stance, new(5), Origin.CommonPractice, card, [], [], [], [], []);
}
