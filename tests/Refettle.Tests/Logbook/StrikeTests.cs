using Refettle.Logbook;

namespace Refettle.Tests.Logbook;

public sealed class StrikeTests
{
    private static readonly StepDone Step = new(Fact.Off("wheel"), null, null);

    [Fact]
    public void Striking_undoes_and_striking_the_strike_restores()
    {
        var device = Begin();
        var before = device.History().Car;
        var step = device.Write(Step);
        var done = device.History().Car;
        var strike = device.Write(new Struck(step.Id, "marked by mistake"));
        Assert.Equal(before, device.History().Car);
        device.Write(new Struck(strike.Id, null));
        Assert.Equal(done, device.History().Car);
        Assert.NotEqual(before, done);
        Assert.Equal([Standing.InForce, Standing.InForce, Standing.InForce, Standing.Struck, Standing.InForce],
            device.History().Lines.Select(line => line.Standing));
    }

    [Fact]
    public void What_two_devices_struck_is_restored_when_both_take_it_back()
    {
        var (here, there) = (Begin(), new TestDevice("phone"));
        var step = here.Write(Step);
        there.Learn(here.Known);
        var first = here.Write(new Struck(step.Id, null));
        var second = there.Write(new Struck(step.Id, null));
        here.Learn(there.Known);
        here.Write(new Struck(first.Id, null));
        Assert.Empty(here.History().Car.Done);
        here.Write(new Struck(second.Id, null));
        Assert.Contains(Fact.Off("wheel"), here.History().Car.Done);
    }

    [Fact]
    public void A_strike_waits_for_its_target()
    {
        var (here, there) = (Begin(), new TestDevice("phone"));
        var step = here.Write(Step);
        there.Learn(here.Known);
        var strike = there.Write(new Struck(step.Id, null));
        var early = CarHistory.Of(TestDevice.Car, here.Known.Where(entry => entry != step).Append(strike));
        Assert.Equal(Standing.NotApplied, early.Line(strike.Id)!.Standing);
        Assert.Contains("is not here yet", early.Line(strike.Id)!.Reason, StringComparison.Ordinal);
        var later = CarHistory.Of(TestDevice.Car, here.Known.Append(strike));
        Assert.Equal(Standing.Struck, later.Line(step.Id)!.Standing);
    }

    [Fact]
    public void A_strike_finds_its_target_although_the_entries_between_are_missing()
    {
        var (here, there) = (Begin(), new TestDevice("phone"));
        var step = here.Write(Step);
        for (var i = 0; i < 5; i++)
            here.Write(new Noted($"note {i}", null));
        there.Learn(here.Known);
        var strike = there.Write(new Struck(step.Id, null));
        var partial = CarHistory.Of(TestDevice.Car, [.. here.Known.TakeWhile(entry => entry != step), step, strike]);
        Assert.Equal(Standing.Struck, partial.Line(step.Id)!.Standing);
    }

    private static TestDevice Begin()
    {
        var device = new TestDevice("bench");
        foreach (var happening in SmallCar.Opening)
            device.Write(happening);
        return device;
    }
}
