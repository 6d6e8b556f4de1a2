namespace Refettle.Cli.Tests.Verbs;

public sealed class DiscoveredTests
{
    [Fact]
    public void What_is_found_tells_what_it_changes_in_a_line_and_as_data()
    {
        using var bench = WithPrice(new());
        Assert.Equal(ExitCode.Good, bench.Run("means", "by=2099-05-20"));
        Assert.Contains("Changes as suggested (replace", bench.Out("find", "damper", "drips"), StringComparison.Ordinal);
        var kept = bench.Json("verdict", "damper", "--decide", "keep").GetProperty("difference");
        Assert.True(kept.GetProperty("plan").GetProperty("work").GetDecimal() < 0);
        Assert.Contains(kept.GetProperty("basket").GetProperty("less").EnumerateArray(),
            piece => piece.GetProperty("thing").GetString() == "part damper");
        Assert.Contains("Changes nothing", bench.Out("find", "damper", "drips"), StringComparison.Ordinal);
    }

    [Fact]
    public void The_scope_is_part_of_it()
    {
        using var bench = WithPrice(new());
        Assert.Equal(ExitCode.Good, bench.Run("job", "add", "axle", "goals=free(axle)", "worth=2000", "work=30 min"));
        Assert.Equal(ExitCode.Good, bench.Run("means", "budget=50"));
        var scope = bench.Json("find", "damper", "drips").GetProperty("difference").GetProperty("scope");
        Assert.Equal("impossible", scope.GetProperty("status").GetString());
        Assert.Contains("the musts fit again", bench.Out("verdict", "damper", "--decide", "keep"), StringComparison.Ordinal);
    }

    [Fact]
    public void What_the_time_was_too_short_for_is_told()
    {
        using var ended = new CancellationTokenSource();
        ended.Cancel();
        using var bench = WithPrice(new(interrupt: ended.Token));
        Assert.Equal(ExitCode.Good, bench.Run("job", "add", "axle", "goals=free(axle)", "worth=2000", "work=30 min"));
        Assert.Contains("Still to be worked out: the scope: the time for it was up.",
            bench.Out("find", "damper", "drips").ReplaceLineEndings(" "), StringComparison.Ordinal);
    }

    /// <summary>A damper that is no longer made, and a price of another one.</summary>
    private static Bench WithPrice(Bench bench)
    {
        Assert.Equal(ExitCode.Good, bench.WithCar().Run("estimate", "damper", "price=90"));
        return bench;
    }
}
