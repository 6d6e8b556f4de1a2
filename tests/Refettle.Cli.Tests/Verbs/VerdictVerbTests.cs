namespace Refettle.Cli.Tests.Verbs;

public sealed class VerdictVerbTests
{
    /// <summary>At 22:30 in London it is half past noon of the next day on Kiritimati, 14 hours ahead (tz database).</summary>
    [Theory]
    [InlineData("UTC", 9)]
    [InlineData("Pacific/Kiritimati", 8)]
    public void Days_are_counted_to_the_day_to_meet_whoever_says_it_by_the_clock_on_the_wall(string zone, int days)
    {
        using var bench = new Bench(clock: new Night()).WithCar();
        bench.Run("spell", "zone", zone);
        bench.Run("means", "by=2027-01-10");
        Assert.Equal(days, bench.Json("verdict").GetProperty("daysLeft").GetInt32());
        bench.Run("means", "by=");
        bench.Run("meet", "2027-01-10", "--at", "1:00");
        Assert.Equal(days, bench.Json("verdict").GetProperty("daysLeft").GetInt32());
    }

    [Fact]
    public void A_figure_below_nothing_is_a_number_and_told_as_below()
    {
        using var bench = new Bench().WithCar();
        Assert.Equal(ExitCode.Faults, bench.Run("estimate", "damper", "price=-4"));
        Assert.Contains("a figure is below 0", bench.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("not a number", bench.Error, StringComparison.Ordinal);
    }

    private sealed class Night : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => new(2027, 1, 1, 22, 30, 0, TimeSpan.Zero);
    }
}
