using Refettle.Logbook;

namespace Refettle.Tests.Logbook;

/// <summary>A clock that is a day off is told of and changes nothing. What can be known of clocks from who knew
/// what: L. Lamport, "Time, clocks, and the ordering of events in a distributed system", Comm. ACM 21 (1978), clock condition: what comes
/// after must not bear an earlier time.</summary>
public sealed class ClockDoubtsTests
{
    private static readonly DateTimeOffset Now = new(2026, 3, 1, 9, 0, 0, TimeSpan.Zero);

    [Theory]
    [InlineData(24, "entries of phone lie 1 day ahead of this device's clock")]
    [InlineData(3, "entries of phone lie 3 h ahead of this device's clock")]
    public void A_phone_that_is_ahead_is_told_of_in_one_line(int hours, string says)
    {
        var phone = new TestDevice("phone", clockOff: TimeSpan.FromHours(hours));
        phone.Write(new Noted("first", null));
        phone.Write(new Noted("second", null));
        Assert.Equal(says, Assert.Single(ClockDoubts.Ahead(phone.Known, Now)).Says("garage").Found);
        Assert.Contains("before its own newest entry", ClockDoubts.Ahead(phone.Known, Now)[0].Says("phone").Found,
            StringComparison.Ordinal);
        Assert.Empty(ClockDoubts.Ahead(phone.Known, Now.AddHours(hours)));
    }

    [Fact]
    public void Who_answers_before_the_question_was_asked_has_a_clock_that_is_off()
    {
        var (phone, garage) = (new TestDevice("phone", clockOff: TimeSpan.FromDays(-1)), new TestDevice("garage"));
        garage.Write(new Noted("asked", null));
        phone.Learn(garage.Known);
        phone.Write(new Noted("answered", null));
        phone.Write(new Noted("answered again", null));
        var doubt = Assert.Single(ClockDoubts.Backward(phone.History().Lines.Select(line => line.Entry)));
        Assert.Equal(new("phone", TimeSpan.FromDays(1), "garage"), doubt);
        Assert.Equal("phone wrote at a time that lies 1 day before that of what it knew from this device: the clock of one of them is off",
            doubt.Says("garage").Found);
        Assert.StartsWith("pit phone wrote", doubt.Says("garage", new([new("phone", "pit phone")])).Found, StringComparison.Ordinal);
    }

    [Fact]
    public void A_clock_that_was_set_back_contradicts_its_own_device()
    {
        var (late, early) = (new TestDevice("phone", clockOff: TimeSpan.FromDays(1)), new TestDevice("phone", seed: 1));
        late.Write(new Noted("late", null));
        early.Learn(late.Known);
        early.Write(new Noted("early", null));
        Assert.Equal("the clock of this device was set back by 1 day",
            Assert.Single(ClockDoubts.Backward(early.Known)).Says("phone").Found);
    }

    /// <summary>Over random evenings of three devices: clocks as they may be, the car is the same as with right ones,
    /// and right ones are never doubted.</summary>
    [Fact]
    public void The_order_is_the_same_whatever_the_clocks_and_right_ones_are_not_doubted()
    {
        var doubted = 0;
        for (var seed = 0; seed < 100; seed++)
        {
            var (right, wrong) = (Evening(seed, _ => default), Evening(seed, random => TimeSpan.FromHours(random.Next(-48, 49))));
            Assert.Equal(Notes(right), Notes(wrong));
            Assert.Empty(ClockDoubts.Backward(right.Lines.Select(line => line.Entry)));
            doubted += ClockDoubts.Backward(wrong.Lines.Select(line => line.Entry)).Count;
        }

        Assert.True(doubted > 100, $"{doubted}");
    }

    [Theory]
    [InlineData(1440, "this device's clock is 1 day ahead of that of the garage's machine")]
    [InlineData(-120, "this device's clock is 2 h behind that of the garage's machine")]
    public void A_device_that_asks_the_garage_says_what_its_clock_is_off(int minutes, string says)
    {
        Assert.Equal(says, ClockDoubts.OfThisDevice(TimeSpan.FromMinutes(minutes))!.Found);
        Assert.Null(ClockDoubts.OfThisDevice(TimeSpan.FromMinutes(Math.Sign(minutes) * 4)));
        Assert.Null(ClockDoubts.OfThisDevice(null));
    }

    private static CarHistory Evening(int seed, Func<Random, TimeSpan> off)
    {
        var (clocks, random) = (new Random(-seed), new Random(seed));
        var devices = new[] { "a", "b", "c" }.Select(name => new TestDevice(name, seed, off(clocks))).ToList();
        for (var i = 0; i < 20; i++)
        {
            var (writer, reader) = (devices[random.Next(3)], devices[random.Next(3)]);
            writer.Write(new Noted($"{i}", null));
            if (random.Next(2) == 0)
                reader.Learn(writer.Known);
        }

        return CarHistory.Of(TestDevice.Car, devices.SelectMany(device => device.Known).DistinctBy(entry => entry.Id));
    }

    private static IEnumerable<string> Notes(CarHistory history) => history.Lines.Select(line => ((Noted)line.Happening!).Text);
}
