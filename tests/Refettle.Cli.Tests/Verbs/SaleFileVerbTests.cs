namespace Refettle.Cli.Tests.Verbs;

public sealed class SaleFileVerbTests
{
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Who_watches_is_told_how_far_a_file_is_that_takes_its_time(bool isWatched)
    {
        using var bench = new Bench().WithCar();
        var page = bench.Beside("sale.html");
        Assert.Equal(ExitCode.Good,
            new Shell(bench.Around with { IsWatched = isWatched, Clock = new SlowClock() }).Run(["sale-file", "--html", page]));
        Assert.Equal(isWatched, bench.Error.Contains($"{page}: 100 %", StringComparison.Ordinal));
    }

    /// <summary>Two seconds pass between any two looks at it.</summary>
    private sealed class SlowClock : TimeProvider
    {
        private long _looks;

        public override long TimestampFrequency => 1;

        public override long GetTimestamp() => Interlocked.Add(ref _looks, 2);
    }
}
