namespace Refettle.Cli.Tests.Verbs;

public sealed class SayVerbTests
{
    [Fact]
    public void A_line_is_shown_first_and_kept_when_told_to()
    {
        using var bench = new Bench().WithCar();
        var before = bench.Json("log", "--most", "0").GetProperty("lines").GetArrayLength();
        Assert.Contains("1 finding: part damper, drips, needs 2", bench.Out("say", "damper leaks, need 2"), StringComparison.Ordinal);
        Assert.Equal(before, bench.Json("log", "--most", "0").GetProperty("lines").GetArrayLength());
        Assert.Equal("Kept: finding: part damper, drips, needs 2.\n", bench.Out("say", "damper leaks, need 2", "--keep", "1"));
        Assert.Contains("drips", bench.Out("log"), StringComparison.Ordinal);
        Assert.Contains("part damper: damper shiny", bench.Out("say", "damper shiny", "--keep", "1") + bench.Out("log"), StringComparison.Ordinal);
    }

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
        Assert.DoesNotContain("open(wheel-nuts)", bench.Json("stance", "on-wheels").GetProperty("done").ToString(), StringComparison.Ordinal);
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
