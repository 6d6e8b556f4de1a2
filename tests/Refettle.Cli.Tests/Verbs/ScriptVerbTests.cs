namespace Refettle.Cli.Tests.Verbs;

public sealed class ScriptVerbTests
{
    [Fact]
    public void A_script_speaks_of_the_car_that_it_begins()
    {
        using var bench = new Bench();
        var script = bench.File("a.commands",
            "new \"Car A\" --id a\nnew \"Car B\" --id b\nset part shelf --new name=Shelf\n--car a note 'on a'\n");
        Assert.True(bench.Run("script", script) == ExitCode.Good, bench.Error);
        Assert.Equal("Shelf", bench.Json("show", "part", "shelf", "--car", "b").GetProperty("name").GetString());
    }

    [Fact]
    public void A_script_stops_at_the_first_line_that_fails_and_says_what_is_recorded()
    {
        using var bench = new Bench();
        var script = bench.File("b.commands", "# begin\nnew Car\n\nadd no-such-kit\nnote never\n");
        Assert.Equal(ExitCode.Faults, bench.Run("script", script));
        Assert.Contains("b.commands:4:1", bench.Error, StringComparison.Ordinal);
        Assert.Contains("The 1 before it are recorded", bench.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("never", bench.Out("log"), StringComparison.Ordinal);
    }

    [Fact]
    public void Paths_in_a_script_are_beside_it()
    {
        using var bench = new Bench();
        bench.File("corner.yaml", File.ReadAllText(bench.Sheet));
        Assert.True(bench.Run("script", bench.File("c.commands", "new Car\nsheet corner.yaml\n")) == ExitCode.Good, bench.Error);
    }

    [Fact]
    public void A_file_that_is_not_there_is_told()
    {
        using var bench = new Bench();
        Assert.Equal(ExitCode.Faults, bench.Run("script", "nowhere.commands"));
        Assert.Contains("there is no such file", bench.Error, StringComparison.Ordinal);
    }
}
