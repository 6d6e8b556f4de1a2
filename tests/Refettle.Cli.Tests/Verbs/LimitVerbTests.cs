namespace Refettle.Cli.Tests.Verbs;

public sealed class LimitVerbTests
{
    [Fact]
    public void A_limit_of_the_sheet_shows_with_whose_it_is_until_the_owner_enters_his_own()
    {
        using var bench = new Bench().WithCar();
        var sheet = bench.File("limits.yaml", """
            refettle: 1
            car: { name: Corner }
            parts: { stub: { name: Stub, limits: { what: play, most: 0.5 mm, origin: maker, source: manual 31-12 } } }
            """);
        Assert.True(bench.Run("sheet", sheet) == ExitCode.Good, bench.Error);
        Assert.Contains("Limit: play 0.5 mm or less (the maker's, manual 31-12)", bench.Out("find", "stub"), StringComparison.Ordinal);
        Assert.Contains("play 0.5 mm or less (the maker's, manual 31-12)", bench.Out("show", "part", "stub"), StringComparison.Ordinal);
        Assert.Contains("Fail. Limit play 0.5 mm or less (the maker's, manual 31-12)",
            bench.Out("find", "stub", "--as", "ball-joint", "--measured", "play", "--value", "0.9mm", "--step", "0.01mm")
                .ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.Equal(ExitCode.Good, bench.Run("limit", "stub", "play", "--most", "2mm", "--whose", "mine"));
        var limit = Assert.Single(bench.Json("find", "stub").GetProperty("limits").EnumerateArray());
        Assert.Equal(("user", 2), (limit.GetProperty("origin").GetString(), limit.GetProperty("upper").GetInt32()));
    }
}
