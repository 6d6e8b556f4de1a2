using Refettle.Judging;
using Refettle.Logbook;

namespace Refettle.Tests.Logbook;

public sealed class AlignmentTests
{
    /// <summary>ISO 8855:2011 signs; left +0.20, right 0.00 is 0.10 to the right, and as the maker's data sheet prints it the
    /// other way round, the side is named.</summary>
    [Theory]
    [InlineData(0.2, 0.0, "0.10° to the right")]
    [InlineData(0.0, 0.2, "0.10° to the left")]
    [InlineData(0.1, 0.1, "straight ahead")]
    public void The_thrust_line_follows_from_the_rear_toe(decimal left, decimal right, string says) =>
        Assert.Equal(says, AlignmentWords.Thrust(Of(null, left, right).ThrustRight!.Value));

    [Theory]
    [InlineData("toe 0.10 camber -0.50 caster 3.2", null)]
    [InlineData("camber=-0.5° toe: 0.1, caster 3.2", null)]
    [InlineData("toe 10 minutes", "\"minutes\" is not toe, camber or caster")]
    [InlineData("toe", "no number of degrees follows toe")]
    [InlineData("toe 1 toe 2", "toe is there twice")]
    [InlineData("", "no angle is there")]
    public void Angles_are_read_from_words(string text, string? fault)
    {
        var read = AlignmentWords.Read("fl", text);
        Assert.Equal(fault, read.Faults.Select(one => one.Found).FirstOrDefault());
        if (fault is null)
            Assert.Equal(new WheelAngles("fl", 0.1m, -0.5m, 3.2m), read.Value);
    }

    [Fact]
    public void A_thrust_line_that_contradicts_the_rear_toe_is_kept_out()
    {
        Assert.Empty(Faults(Of(0.1m, 0.2m, 0)));
        Assert.Contains("to the left", Assert.Single(Faults(Of(-0.1m, 0.2m, 0))).Found, StringComparison.Ordinal);
        Assert.Contains("there is no angle", Assert.Single(Faults(new(true, [], null, null, null))).Found, StringComparison.Ordinal);
        Assert.Equal(2, Faults(new(true, [new("front", 1, 0, 0), new("fl", 30, 0, 0)], null, null, null)).Count);
    }

    [Fact]
    public void An_alignment_as_found_settles_the_baseline_and_one_as_set_does_not()
    {
        bool IsSettled(bool asFound)
        {
            var device = new TestDevice("bench");
            device.Write(new CarOpened("Heron", 1988, "EUR"));
            device.Write(Of(null, 0.1m, 0.1m) with { AsFound = asFound });
            return Baseline.Of(device.History().Car, []).Single(line => line.Item.Id == BaselineItems.Alignment).IsSettled;
        }

        Assert.True(IsSettled(asFound: true));
        Assert.False(IsSettled(asFound: false));
    }

    private static ValueList<Fault> Faults(AlignmentMeasured measured) => HappeningCheck.Of(SmallCar.After(), measured);

    private static AlignmentMeasured Of(decimal? thrust, decimal left, decimal right) =>
        new(true, [new("rl", left, null, null), new("rr", right, null, null)], thrust, null, null);
}
