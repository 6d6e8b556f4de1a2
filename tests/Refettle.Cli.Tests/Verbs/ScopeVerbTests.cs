namespace Refettle.Cli.Tests.Verbs;

public sealed class ScopeVerbTests
{
    private static Bench WithJobs()
    {
        var bench = new Bench().WithCar();
        foreach (var job in new string[][]
        {
            ["damper", "goals=free(damper)", "worth=300", "work=30 min", "parts=60"],
            ["axle", "goals=free(axle)", "worth=10..50..90", "work=20 h", "parts=20"],
            ["polish", "wish=maybe", "worth=0..400..800", "work=1 h"],
        })
            Assert.True(bench.Run(["job", "add", .. job]) == ExitCode.Good, bench.Error);
        return bench;
    }

    [Theory]
    [InlineData("60h")]
    [InlineData("60 h")]
    [InlineData("3600 min")]
    public void Hours_are_taken_with_their_unit_too(string hours)
    {
        using var bench = WithJobs();
        Assert.Equal(bench.Out("scope", "--hours", "60"), bench.Out("scope", "--hours", hours));
        Assert.Equal(ExitCode.Good, bench.Run("scope", "--hours", hours, "--by", "sat+5w"));
    }

    [Theory]
    [InlineData("--hours: \"60 kg\" is no time. Write it like 60h", "--hours", "60 kg")]
    [InlineData("--by: \"2027-02-30\" is not a day. Write it as 2027-01-09, today", "--by", "2027-02-30")]
    public void A_limit_that_cannot_be_read_is_told(string says, params string[] limit)
    {
        using var bench = WithJobs();
        Assert.Equal(ExitCode.Faults, bench.Run(["scope", .. limit]));
        Assert.Contains(says, bench.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_worth_it_is_in_and_the_rest_says_why_not()
    {
        using var bench = WithJobs();
        var scope = bench.Json("scope", "--hours", "60");
        Assert.Equal("optimal", scope.GetProperty("status").GetString());
        Assert.Equal("damper", Assert.Single(scope.GetProperty("chosen").EnumerateArray()).GetString());
        Assert.All(scope.GetProperty("left").EnumerateArray(), left => Assert.Equal("not-worth-it", left.GetProperty("why").GetString()));
        Assert.Equal(scope.GetProperty("gain").GetDecimal(), scope.GetProperty("bound").GetDecimal());
        var shown = bench.Out("scope", "--hours", "60");
        Assert.Contains("1 of 3 jobs are worth doing — proven", shown, StringComparison.Ordinal);
        Assert.Contains("brings less than it takes", shown, StringComparison.Ordinal);
    }

    [Fact]
    public void A_must_that_breaks_what_there_is_is_told_before_it_is_taken_on()
    {
        using var bench = WithJobs();
        Assert.Equal(ExitCode.Good, bench.Run("means", "hours=10 h"));
        Assert.Equal(ExitCode.Faults, bench.Run("job", "set", "axle", "wish=must"));
        Assert.Contains("h too much", bench.Error, StringComparison.Ordinal);
        Assert.Equal("want", bench.Json("job", "list").GetProperty("jobs")[0].GetProperty("wish").GetString());
        Assert.Contains("does not fit", bench.Out("scope", "--try", "axle"), StringComparison.Ordinal);
        Assert.Equal(ExitCode.Good, bench.Run("job", "set", "axle", "wish=must", "--anyway"));
        Assert.Equal(ExitCode.Impossible, bench.Run("scope"));
        Assert.Contains("the musts take", bench.Out("scope"), StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_kept_is_chosen_until_something_else_is()
    {
        using var bench = WithJobs();
        Assert.Equal(ExitCode.Good, bench.Run("scope", "--keep"));
        Assert.Equal("damper", bench.Json("job", "list").GetProperty("scope")[0].GetString());
        Assert.Equal(ExitCode.Good, bench.Run("choose", "axle", "polish"));
        Assert.Equal(2, bench.Json("job", "list").GetProperty("scope").GetArrayLength());
        Assert.Equal(ExitCode.Faults, bench.Run("choose", "wheels"));
    }

    [Fact]
    public void Points_need_a_rate_and_waits_need_days()
    {
        using var bench = WithJobs();
        Assert.Equal(ExitCode.Good, bench.Run("job", "set", "polish", "worth=30 points", "waits=cure 400 d", "wish=want"));
        Assert.Equal(ExitCode.Faults, bench.Run("scope"));
        Assert.Contains("per-point", bench.Error, StringComparison.Ordinal);
        var left = bench.Json("scope", "--per-point", "20", "--by", DateTimeOffset.UnixEpoch.AddYears(40).ToString("yyyy-MM-dd"));
        Assert.Contains(left.GetProperty("left").EnumerateArray(),
            job => job.GetProperty("job").GetString() == "polish" && job.GetProperty("why").GetString() == "waits-too-long");
    }

    [Fact]
    public void A_frontier_rises()
    {
        using var bench = WithJobs();
        var points = bench.Json("scope", "--frontier", "money", "--points", "4").GetProperty("points").EnumerateArray()
            .Select(point => point.GetProperty("gain").GetDecimal()).ToArray();
        Assert.Equal(points.Order(), points);
        Assert.True(points[^1] > points[0]);
        Assert.Contains("Every point is proven", bench.Out("scope", "--frontier"), StringComparison.Ordinal);
    }

    [Fact]
    public void Since_it_is_open_more_is_offered_and_taken_as_a_maybe()
    {
        using var bench = new Bench().WithCar();
        Assert.Equal(ExitCode.Faults, bench.Run("scope", "--since-open"));
        Assert.Contains("Choose jobs", bench.Error, StringComparison.Ordinal);
        var offers = bench.Json("scope", "--since-open", "off(axle)").GetProperty("offers").EnumerateArray().ToList();
        var space = Assert.Single(offers, offer => offer.GetProperty("job").GetProperty("id").GetString() == "look-above-axle");
        Assert.Equal(0, space.GetProperty("now").GetProperty("total").GetDecimal());
        Assert.True(space.GetProperty("later").GetProperty("total").GetDecimal() > 0);
        Assert.Equal(ExitCode.Good, bench.Run("scope", "--since-open", "off(axle)", "--take", "look-above-axle"));
        Assert.Equal("maybe", bench.Json("job", "list").GetProperty("jobs")[0].GetProperty("wish").GetString());
        Assert.Equal(ExitCode.Faults, bench.Run("scope", "--since-open", "off(axle)", "--take", "nothing-such"));
    }
}
