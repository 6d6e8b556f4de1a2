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

    [Fact]
    public void Labels_that_cannot_be_written_name_the_file_that_was_asked_for()
    {
        using var bench = new Bench().WithCar();
        bench.Run("bag", "pack", "14", "bolts");
        Assert.Equal(ExitCode.Faults, bench.Run("labels", bench.Beside("nope/labels.pdf")));
        Assert.DoesNotContain(".partial", bench.Error, StringComparison.Ordinal);
    }
}
