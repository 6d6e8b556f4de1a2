namespace Refettle.Cli.Tests.Verbs;

public sealed class BagVerbTests
{
    [Fact]
    public void A_bag_is_packed_shown_moved_found_by_its_step_and_emptied()
    {
        using var bench = new Bench().WithCar();
        Assert.Contains("Bag 1", bench.Out("bag", "pack", "next", "four washers", "--for", "joint damper-top", "--in", "blue box"),
            StringComparison.Ordinal);
        bench.Run("bag", "pack", "1", "two clips");
        Assert.Equal("Bag 1, in shelf\n  four washers\n  two clips\nFor joint damper-top\n", bench.Out("bag", "move", "01", "shelf"));
        Assert.Equal("1", Codes(bench, "for", "open(damper-top)"));
        Assert.Equal("1", Codes(bench, "for", "off(damper)"));
        Assert.Equal("", Codes(bench, "for", "open(wheel-nuts)"));
        Assert.Equal("1", Codes(bench, "left-over"));
        bench.Run("bag", "empty", "1");
        Assert.Equal("", Codes(bench, "list"));
        Assert.Equal("1", Codes(bench, "list", "--all"));
        Assert.Contains("Bag 2", bench.Out("bag", "pack", "next", "nuts"), StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_wrong_is_said_in_one_line()
    {
        using var bench = new Bench().WithCar();
        Assert.Equal(ExitCode.Faults, bench.Run("bag", "show", "14"));
        Assert.Contains("bag 14: there is no such bag.", bench.Error, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Faults, bench.Run("bag", "pack", "Box of nuts", "nuts"));
        Assert.Contains("up to 8", bench.Error, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Faults, bench.Run("bag", "pack", "14", "nuts", "--for", "joint damper-tob"));
        Assert.Contains("Did you mean joint damper-top", bench.Error, StringComparison.Ordinal);
    }

    private static string Codes(Bench bench, params string[] words) =>
        string.Join(' ',
            bench.Json(["bag", .. words]).GetProperty("bags").EnumerateArray().Select(bag => bag.GetProperty("code").GetString()));
}
