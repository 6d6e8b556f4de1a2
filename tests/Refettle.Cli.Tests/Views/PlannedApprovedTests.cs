namespace Refettle.Cli.Tests.Views;

/// <summary>Answers that hang on the day, the shelf and drawn futures, for a small car on a fixed day
/// with a fixed seed. To approve anew, run with REFETTLE_APPROVE=1 and look at the difference.</summary>
public sealed class PlannedApprovedTests : IDisposable
{
    private readonly Bench _bench = new(clock: new Monday());

    public PlannedApprovedTests()
    {
        _bench.WithCar();
        string[][] lines =
        [
            ["spell", "zone", "Europe/Berlin"], ["spell", "add", "evenings", "--on", "tue", "thu", "--from", "18:30", "--until", "21:30"],
            ["meet", "2027-04-10", "--at", "10:00", "--what", "hand-over"],
            ["job", "add", "straps", "name=New straps", "goals=free(axle),free(damper)", "worth=100", "work=30 min", "parts=25"],
            ["choose", "straps"],
            ["stock", "assign", "DA-7", "part damper"], ["stock", "describe", "DA-7", "--name", "Damper"],
            ["verdict", "damper", "--decide", "replace"],
            ["orders", "place", "Harbour Rubber", "DA-7=1@80", "--on", "2027-02-20", "--promised", "2027-03-08"],
            ["spent", "38.40", "penetrating oil", "--kind", "consumables", "--on", "2027-02-27"],
        ];
        Assert.All(lines, line => Assert.True(_bench.Run(line) == ExitCode.Good, $"{line[0]}: {_bench.Error}"));
    }

    [Theory]
    [InlineData("timeline", "timeline", "--seconds", "0")]
    [InlineData("tonight", "tonight", "--minutes", "70")]
    [InlineData("forecast", "forecast", "--futures", "2000", "--seed", "1")]
    [InlineData("ledger", "ledger")]
    [InlineData("basket", "basket")]
    public void An_answer_looks_as_approved(string name, params string[] words)
    {
        var shown = _bench.Out(words).ReplaceLineEndings("\n");
        var file = Path.Combine("Views", $"{name}.approved.txt");
        if (Environment.GetEnvironmentVariable("REFETTLE_APPROVE") is not null)
            File.WriteAllText(Path.Combine(Content.Folder(AppContext.BaseDirectory), "tests", "Refettle.Cli.Tests", file), shown);
        Assert.Equal(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, file)).ReplaceLineEndings("\n"), shown);
    }

    public void Dispose() => _bench.Dispose();

    /// <summary>Monday, 1 March 2027, nine in the morning in Berlin.</summary>
    private sealed class Monday : TimeProvider
    {
        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

        public override DateTimeOffset GetUtcNow() => new(2027, 3, 1, 8, 0, 0, TimeSpan.Zero);
    }
}
