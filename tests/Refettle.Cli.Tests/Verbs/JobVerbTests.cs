namespace Refettle.Cli.Tests.Verbs;

public sealed class JobVerbTests
{
    [Fact]
    public void A_job_is_kept_as_it_was_said()
    {
        using var bench = new Bench().WithCar();
        var job = bench.Json("job", "add", "new-wheel", "goals=off(wheel)", "worth=10..20..30 points", "work=0.5 h", "parts=90",
            "waits=delivery 2..4 d the tyre").GetProperty("job");
        Assert.Equal("New wheel", job.GetProperty("name").GetString());
        Assert.Equal("want", job.GetProperty("wish").GetString());
        Assert.Equal(30, job.GetProperty("work").GetDecimal());
        Assert.Equal("points", job.GetProperty("worth").GetProperty("in").GetString());
        Assert.Equal(4, job.GetProperty("waits")[0].GetProperty("mostDays").GetDecimal());
        Assert.Contains("the tyre 2 d", bench.Out("job", "list"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("worth=much", "least..likely..most")]
    [InlineData("worth=1..2", "least..likely..most")]
    [InlineData("waits=cure two coats", "cure 1.5..3 d")]
    [InlineData("wish=perhaps", "must")]
    [InlineData("colour=red", "worth")]
    [InlineData("goals=wheel", "off(part)")]
    public void What_is_wrong_is_said_with_what_is_right(string value, string mend)
    {
        using var bench = new Bench().WithCar();
        Assert.Equal(ExitCode.Faults, bench.Run("job", "add", "wheel", value));
        Assert.Contains(mend, bench.Error, StringComparison.Ordinal);
        Assert.Contains("No job yet", bench.Out("job", "list"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_limit_is_lifted_by_an_empty_value()
    {
        using var bench = new Bench().WithCar();
        Assert.Contains("900 EUR, 20.0 h, ready by 2027-05-08", bench.Out("means", "budget=900", "hours=20 h", "by=2027-05-08"),
            StringComparison.Ordinal);
        Assert.Contains("900 EUR, ready by 2027-05-08", bench.Out("means", "hours="), StringComparison.Ordinal);
        Assert.Equal(ExitCode.Faults, bench.Run("means", "by=8 May"));
    }
}
