using Refettle.CloseUp;

namespace Refettle.Tests.CloseUp;

public sealed class TorqueStagesTests
{
    [Fact]
    public void Many_fasteners_are_tightened_in_three_steps_and_once_around() // common practice; 30 and 60 % of 85 N·m by hand
    {
        var stages = TorqueStages.To(new(85), TighteningSequence.Star(5));
        Assert.Equal([null, 26, 51, 85, 85], stages.Select(stage => stage.Torque?.Value));
        Assert.Equal([1, 2, 3, 4, 5], stages[4].Order);
        Assert.Equal([1, 3, 5, 2, 4], stages[3].Order);
    }

    [Fact]
    public void Few_fasteners_go_straight_to_their_torque() =>
        Assert.Equal([null, 60], TorqueStages.To(new(60), TighteningSequence.Around(2)).Select(stage => stage.Torque?.Value));

    [Fact]
    public void Angles_follow_the_torque_and_no_wrench_goes_around_after_them()
    {
        var stages = TorqueStages.To(new(30), TighteningSequence.Spiral(2, 5), 90, 90);
        Assert.Equal([null, 9, 18, 30, null, null], stages.Select(stage => stage.Torque?.Value));
        Assert.Equal([90, 90], stages.Select(stage => stage.AngleDegrees).OfType<decimal>());
    }

    [Fact]
    public void Small_torques_keep_stages_above_zero() =>
        Assert.Equal([null, 0.5m, 0.5m, 1, 1], TorqueStages.To(new(1), TighteningSequence.Star(4)).Select(stage => stage.Torque?.Value));
}
