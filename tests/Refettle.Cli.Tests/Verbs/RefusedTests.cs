namespace Refettle.Cli.Tests.Verbs;

/// <summary>What cannot be meant is refused, in words that say what was found and what to do.</summary>
public sealed class RefusedTests
{
    [Fact]
    public void A_store_far_from_any_folder_that_is_there_is_not_made()
    {
        using var bench = new Bench();
        Assert.Equal(ExitCode.Store, bench.Run("cars", "--store", bench.Beside("nope/deep/x.db")));
        Assert.Contains("there is no folder", bench.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(bench.Beside("nope")));
        Assert.Equal(ExitCode.Good, bench.Run("cars", "--store", bench.Beside("data/x.db")));
    }

    [Theory]
    [InlineData("2")]
    [InlineData("0.4")]
    [InlineData("100")]
    public void A_confidence_below_a_coin_or_of_all_is_refused(string confidence)
    {
        using var bench = new Bench().WithCar();
        Assert.Equal(ExitCode.Faults, bench.Run("forecast", "off(axle)", "--confidence", confidence));
        Assert.Contains("80 or 0.8", bench.Error, StringComparison.Ordinal);
    }

    /// <summary>7,5 minutes were written down as 75, 5,50 euros as 550.</summary>
    [Theory]
    [InlineData("done", "off(rr-clip)", "--minutes", "7,5")]
    [InlineData("spent", "5,50", "rags")]
    [InlineData("tonight", "--minutes", "1,5")]
    [InlineData("task", "takes", "polish", "7,5")]
    [InlineData("forecast", "--confidence", "0,8")]
    public void A_number_with_a_comma_is_not_guessed_at(params string[] words)
    {
        using var bench = new Bench().WithCar();
        Assert.Equal(ExitCode.Usage, bench.Run(words));
        Assert.Contains("decimal point", bench.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_day_that_has_passed_or_has_no_spell_is_noted()
    {
        using var bench = new Bench().WithCar();
        Assert.Equal(ExitCode.Good, bench.Run("meet", "2020-01-01"));
        Assert.Contains("it has passed already", bench.Error, StringComparison.Ordinal);
        bench.Run("spell", "add", "evenings", "--on", "tue", "--from", "18:00", "--until", "21:00");
        Assert.Equal(ExitCode.Good, bench.Run("spell", "miss", "evenings", "wed"));
        Assert.Contains("it would not take place", bench.Error, StringComparison.Ordinal);
        bench.Run("spell", "miss", "evenings", "tue+1w");
        Assert.DoesNotContain("it would not take place", bench.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Labels_that_cannot_be_written_name_the_file_that_was_asked_for()
    {
        using var bench = new Bench().WithCar();
        bench.Run("bag", "pack", "14", "bolts");
        Assert.Equal(ExitCode.Faults, bench.Run("labels", bench.Beside("nope/labels.pdf")));
        Assert.DoesNotContain(".partial", bench.Error, StringComparison.Ordinal);
    }
}
