namespace Refettle.Cli.Tests.Verbs;

public sealed class SayVerbTests
{
    [Fact]
    public void A_line_is_shown_first_and_kept_when_told_to()
    {
        using var bench = new Bench().WithCar();
        var before = bench.Json("log", "--most", "0").GetProperty("lines").GetArrayLength();
        Assert.Contains("1 finding: part damper, drips, 2 new into the basket", bench.Out("say", "damper leaks, need 2"),
            StringComparison.Ordinal);
        Assert.Equal(before, bench.Json("log", "--most", "0").GetProperty("lines").GetArrayLength());
        Assert.StartsWith("Kept: finding: part damper, drips, 2 new into the basket.\n",
            bench.Out("say", "damper leaks, need 2", "--keep", "1"), StringComparison.Ordinal);
        Assert.Contains("drips", bench.Out("log"), StringComparison.Ordinal);
        Assert.Contains("part damper: damper shiny", bench.Out("say", "damper shiny", "--keep", "1") + bench.Out("log"),
            StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_line_needs_is_in_the_basket_until_it_is_undone_or_fitted()
    {
        using var bench = new Bench().WithCar();
        Assert.Empty(Wanted(bench));
        bench.Run("say", "damper leaks, need 2", "--keep", "1");
        Assert.Equal(["part damper 2 asked"], Wanted(bench));
        bench.Run("strike", "last");
        Assert.Empty(Wanted(bench));
        Assert.Equal(ExitCode.Good, bench.Run("stock", "want", "part damper", "3"));
        Assert.Equal(["part damper 3 asked"], Wanted(bench));
        bench.Run("stock", "count", "D-1=1");
        bench.Run("stock", "fit", "D-1", "--on", "part damper");
        Assert.Equal(["part damper 2 asked"], Wanted(bench));
        bench.Run("stock", "want", "part damper", "0");
        Assert.Empty(Wanted(bench));
        Assert.Equal(ExitCode.Faults, bench.Run("stock", "want", "part dampr", "1"));
        Assert.Contains("damper", bench.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Who_strikes_half_a_line_is_told_of_the_other_half()
    {
        using var bench = new Bench().WithCar();
        bench.Run("say", "damper leaks, need 2", "--keep", "1");
        Assert.Contains("1 entry that was written with it still counts", bench.Out("strike", "last"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_line_of_two_entries_is_struck_as_a_whole()
    {
        using var bench = new Bench().WithCar();
        bench.Run("say", "damper leaks, need 2", "--keep", "1");
        Assert.StartsWith("Entries ", bench.Out("strike", "last", "--line"), StringComparison.Ordinal);
        Assert.Empty(Wanted(bench));
        Assert.Equal(2,
            bench.Json("log", "--most", "4").GetProperty("lines").EnumerateArray()
                .Count(line => line.GetProperty("standing").GetString() == "struck"));
        Assert.Equal(ExitCode.Good, bench.Run("strike", "last", "--line"));
        Assert.Equal(["part damper 2 asked"], Wanted(bench));
    }

    private static List<string> Wanted(Bench bench) => [.. bench.Json("basket").GetProperty("unnumbered").EnumerateArray()
        .Select(need => $"{need.GetProperty("thing").GetString()} {need.GetProperty("count").GetInt32()} {need.GetProperty("reason").GetString()}")];

    [Fact]
    public void A_bag_a_step_and_a_torque_become_entries_of_their_kind()
    {
        using var bench = new Bench().WithCar();
        bench.Run("say", "bag 14 four washers thick ones outside", "--keep", "1");
        Assert.Contains("four washers thick ones outside", bench.Out("bag", "show", "14"), StringComparison.Ordinal);
        bench.Run("say", "wheel nuts undone", "--keep", "1");
        Assert.Contains("open(wheel-nuts)", bench.Json("stance", "on-stands").GetProperty("done").ToString(), StringComparison.Ordinal);
        bench.Run("say", "wheel nuts torqued 110 Nm", "--keep", "1");
        Assert.Contains("wheel-nuts torqued, 110 N·m", bench.Out("log"), StringComparison.Ordinal);
        Assert.DoesNotContain("open(wheel-nuts)", bench.Json("stance", "on-wheels").GetProperty("done").ToString(),
            StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_wrong_is_said_in_one_line()
    {
        using var bench = new Bench().WithCar();
        Assert.Equal(ExitCode.Faults, bench.Run("say", " "));
        Assert.Equal(ExitCode.Faults, bench.Run("say", "damper leaks", "--keep", "99"));
        Assert.Contains("there is no reading 99", bench.Error, StringComparison.Ordinal);
    }
}
