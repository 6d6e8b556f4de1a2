using Refettle.CloseUp;
using Refettle.Logbook;
using Refettle.Tests.Logbook;

namespace Refettle.Tests.CloseUp;

public sealed class ClosingTests
{
    private static readonly Joint Wheel = new()
    {
        Id = "wheel-nuts",
        Holds = ["wheel", "hub"],
        Count = 5,
        Torque = new(85),
        Origin = Origin.Maker,
        Ways = [new() { Id = "socket", Tool = "19 mm socket" }],
    };

    [Fact]
    public void A_card_has_order_stages_and_what_is_needed_new()
    {
        var card = ClosingCard.Of(Wheel with { SingleUse = true, AtRideHeight = true }, ThreadCondition.Dry, ThreadCondition.Dry,
            null).Value;
        Assert.Equal([1, 3, 5, 2, 4], card.Order);
        Assert.Equal([null, 26, 51, 85, 85], card.Stages.Select(stage => stage.Torque?.Value));
        Assert.Equal((5, 2), (card.NewFasteners, card.Says.Count));
    }

    [Fact]
    public void While_something_is_asked_there_are_no_stages()
    {
        var card = ClosingCard.Of(Wheel, ThreadCondition.NotSaid, ThreadCondition.AntiSeize, null).Value;
        Assert.Equal((TorqueUse.Ask, 0), (card.Advice!.Use, card.Stages.Count));
    }

    [Fact]
    public void Without_a_figure_the_card_says_what_it_knows()
    {
        Assert.NotNull(ClosingCard.Of(Wheel with { Torque = null, Thread = "M12x1.5", Grade = "10.9" }, ThreadCondition.NotSaid,
            ThreadCondition.Dry, null).Value.General);
        var card = ClosingCard.Of(Wheel with { Torque = null }, ThreadCondition.NotSaid, ThreadCondition.Dry, null).Value;
        Assert.Null(card.General);
        Assert.Contains("maker's manual", card.Says.Single());
    }

    [Theory]
    [InlineData(2)]
    [InlineData(0)]
    [InlineData(-5)]
    public void Rows_must_hold_all_fasteners_alike(int rows) =>
        Assert.False(ClosingCard.Of(Wheel, ThreadCondition.Dry, ThreadCondition.Dry, rows).IsGood);

    [Fact]
    public void An_angle_is_more_than_nothing() =>
        Assert.False(ClosingCard.Of(Wheel, ThreadCondition.Dry, ThreadCondition.Dry, null, 0).IsGood);

    [Fact]
    public void Opening_a_joint_again_voids_its_torque()
    {
        Happening[] closed = [new StepDone(Fact.Open("tank-body"), null, null), new StepReversed(Fact.Open("tank-body"), null),
            new JointTightened("tank-body", Tightness.Torqued, new(48), null, null)];
        Assert.Equal(["tank-body"], ClosingRecord.Of(SmallCar.After(closed)).Tightenings.Select(one => one.Joint));
        var again = ClosingRecord.Of(SmallCar.After([.. closed, new StepDone(Fact.Open("tank-body"), null, null)]));
        Assert.Empty(again.Tightenings);
        Assert.Equal(["tank-body"], again.Opened);
    }

    [Fact]
    public void Taking_a_part_off_opens_what_held_it() =>
        Assert.Contains("tank-body", ClosingRecord.Of(SmallCar.After(new StepDone(Fact.Off("tank"), null, null))).Opened);

    [Fact]
    public void The_stance_at_the_time_and_the_newest_height_count()
    {
        var record = ClosingRecord.Of(SmallCar.After(
            new StanceTaken("on-stands"), new JointTightened("tank-body", Tightness.Snug, null, null, null),
            new HeightMeasured("rl", new(380)), new HeightMeasured("rl", new(382))));
        Assert.Equal("on-stands", record.Tightenings.Single().Stance);
        Assert.Equal([("rl", new Millimetres(382))], record.Heights);
    }

    [Fact]
    public void Mistakes_are_kept_out_of_the_log()
    {
        var history = SmallCar.After();
        Assert.All(
            new Happening[]
            {
                new JointTightened("no-such", Tightness.Torqued, null, null, null),
                new JointTightened("tank-body", Tightness.Torqued, new(0), null, null),
                new JointTightened("tank-body", Tightness.Snug, new(5), null, null),
                new JointTightened("tank-body", Tightness.Snug, null, null, null) { Checks = [TighteningCheck.PaintMark] },
                new HeightMeasured("front", new(380)), new HeightMeasured("fl", new(38)),
            },
            wrong => Assert.Contains(HappeningCheck.Of(history, wrong), fault => fault.Severity == Severity.Error));
        Assert.Empty(HappeningCheck.Of(history, new JointTightened("tank-body", Tightness.Torqued, new(48), null, null)));
        Assert.Empty(HappeningCheck.Of(history, new HeightMeasured("fl", new(380))));
    }
}
