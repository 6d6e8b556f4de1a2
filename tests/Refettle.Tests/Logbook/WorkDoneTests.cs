using Refettle.Logbook;

namespace Refettle.Tests.Logbook;

/// <summary>What a log of steps says of the car. The expected facts are worked out by hand from the definitions of the facts.</summary>
public sealed class WorkDoneTests
{
    [Theory]
    [InlineData("open(wheel-axle)", "open(wheel-axle)")]
    [InlineData("state(battery-off)", "state(battery-off)")]
    [InlineData("off(wheel)", "off(wheel) free(wheel) open(wheel-axle)")]
    [InlineData("free(damper)", "off(damper) free(damper) open(damper-axle) open(damper-body)")]
    [InlineData("reach(floor)", "off(tank) free(tank) open(tank-body) reach(floor)")]
    [InlineData("off(axle-unit)", "off(axle) off(axle-unit) off(damper) open(axle-body) open(damper-body) open(wheel-axle)")]
    public void A_step_brings_what_follows_from_it(string step, string facts) =>
        Assert.Equal(Facts(facts), SmallCar.After(Done(step)).Car.Done);

    [Fact]
    public void A_part_put_back_is_fitted_but_not_yet_fastened() =>
        Assert.Equal(Facts("open(tank-body)"), SmallCar.After(Done("off(tank)"), Reversed("off(tank)")).Car.Done);

    [Fact]
    public void Refit_in_reverse_brings_the_car_back() =>
        Assert.Empty(SmallCar.After(Done("free(tank)"), Reversed("off(tank)"), Reversed("open(tank-body)")).Car.Done);

    [Fact]
    public void A_unit_comes_back_whole_but_without_what_was_split_from_it()
    {
        Happening[] off = [Done("off(axle-unit)"), Done("open(wheel-axle)")];
        Assert.DoesNotContain(Fact.Off("damper"), SmallCar.After([.. off, Reversed("off(axle-unit)")]).Car.Done);
        var split = SmallCar.After([.. off, Done("open(damper-axle)"), Reversed("off(axle-unit)")]).Car.Done;
        Assert.Contains(Fact.Off("damper"), split);
        Assert.DoesNotContain(Fact.Off("axle"), split);
    }

    [Theory]
    [InlineData("off(roof)", "the car has no part or sub-assembly roof")]
    [InlineData("off(body)", "part body is what the rest hangs on and never comes off")]
    [InlineData("reach(attic)", "the car has no space attic")]
    public void A_step_that_does_not_fit_changes_nothing_and_says_why(string step, string reason)
    {
        var history = SmallCar.After(Done(step));
        Assert.Empty(history.Car.Done);
        Assert.Equal((Standing.NotApplied, reason),
            (history.Lines[history.Lines.Count - 1].Standing, history.Lines[history.Lines.Count - 1].Reason));
    }

    [Fact]
    public void A_joint_to_a_part_that_is_off_cannot_be_closed()
    {
        var history = SmallCar.After(Done("off(tank)"), Reversed("open(tank-body)"));
        Assert.Equal("it cannot be closed: part tank is off the car and part body is on it", history.Lines[history.Lines.Count - 1].Reason);
        Assert.Contains(Fact.Open("tank-body"), history.Car.Done);
    }

    [Fact]
    public void A_car_begins_on_its_wheels_and_stances_replace_each_other()
    {
        Assert.Equal("on-wheels", SmallCar.After().Car.Stance);
        Assert.Equal("on-stands", SmallCar.After(new StanceTaken("on-stands")).Car.Stance);
        Assert.Equal("on-wheels", SmallCar.After(new StanceTaken("on-stands"), Done("state(on-wheels)")).Car.Stance);
        Assert.Equal("on-stands", SmallCar.After(new StanceTaken("on-stands"), new StanceTaken("flying")).Car.Stance);
    }

    private static StepDone Done(string fact) => new(Parse(fact), null, null);

    private static StepReversed Reversed(string fact) => new(Parse(fact), null);

    private static ValueList<Fact> Facts(string facts) => facts.Split(' ').Select(Parse).Order().ToValueList();

    private static Fact Parse(string text) => Fact.TryParse(text, out var fact) ? fact : throw new ArgumentException(text);
}
