namespace Refettle.Cli.Tests.Verbs;

public sealed class LogVerbTests
{
    [Fact]
    public void What_is_done_is_left_out_of_the_next_plan_and_striking_brings_it_back()
    {
        using var bench = new Bench().WithCar();
        var whole = Steps(bench);
        Assert.True(bench.Run("done", "open(damper-top)", "--minutes", "7") == ExitCode.Good, bench.Error);
        Assert.Equal(whole - 1, Steps(bench));
        Assert.Equal(ExitCode.Good, bench.Run("strike", "last", "--why", "wrong side"));
        Assert.Equal(whole, Steps(bench));
    }

    [Fact]
    public void The_log_shows_every_entry_with_the_mark_to_strike_it_by()
    {
        using var bench = new Bench().WithCar();
        bench.Run("note", "Sill is soft", "--about", "part body");
        var lines = bench.Json("log").GetProperty("lines");
        var last = lines[lines.GetArrayLength() - 1];
        Assert.Equal("part body: Sill is soft", last.GetProperty("says").GetString());
        Assert.Equal(ExitCode.Good, bench.Run("strike", last.GetProperty("mark").GetString()!));
        Assert.Equal("struck", bench.Json("log").GetProperty("lines")[lines.GetArrayLength() - 1].GetProperty("standing").GetString());
    }

    /// <summary>An evening is looked up by the clock it was worked by. Berlin is two hours ahead of UTC in
    /// summer (IANA time zone database).</summary>
    [Fact]
    public void The_log_and_soaks_go_by_the_clock_on_the_wall_where_the_car_stands()
    {
        using var bench = new Bench(clock: new SummerNight()).WithCar();
        Assert.Equal(ExitCode.Good, bench.Run("spell", "zone", "Europe/Berlin"));
        var log = bench.Out("log", "--most", "1");
        Assert.Contains("When (Europe/Berlin)", log, StringComparison.Ordinal);
        var written = TimeZoneInfo.ConvertTime(bench.Json("log", "--most", "1").GetProperty("lines")[0].GetProperty("at")
            .GetDateTimeOffset(), TimeZoneInfo.FindSystemTimeZoneById("Europe/Berlin"));
        Assert.Contains($"{written:yyyy-MM-dd HH:mm}", log, StringComparison.Ordinal);
        Assert.Contains("Thu 2026-07-02 00:30", bench.Out("soak", "damper-top"), StringComparison.Ordinal);
    }

    [Fact]
    public void The_log_names_a_paired_device_as_its_owner_does_and_keeps_what_it_wrote_under()
    {
        using var bench = new Bench().WithCar();
        var wrote = bench.Json("log").GetProperty("lines")[0].GetProperty("device").GetString()!;
        using (var store = Store.Open(bench.Around.Store).Value)
            Assert.True(store.Devices.Wrote(new("a1", "pit phone", DateTimeOffset.UnixEpoch), [wrote]).IsGood);
        Assert.Contains("pit phone", bench.Out("log"), StringComparison.Ordinal);
        Assert.DoesNotContain(wrote, bench.Out("log"), StringComparison.Ordinal);
        var line = bench.Json("log").GetProperty("lines")[0];
        Assert.Equal((wrote, "pit phone"), (line.GetProperty("device").GetString(), line.GetProperty("deviceName").GetString()));
    }

    [Fact]
    public void A_mark_that_fits_nothing_changes_nothing()
    {
        using var bench = new Bench().WithCar();
        var before = bench.Json("log").GetProperty("lines").GetArrayLength();
        Assert.Equal(ExitCode.Faults, bench.Run("strike", "zzzzzzzz"));
        Assert.Equal(before, bench.Json("log").GetProperty("lines").GetArrayLength());
    }

    private static int Steps(Bench bench) => bench.Json("reach", "free(damper)").GetProperty("steps").GetArrayLength();

    private sealed class SummerNight : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => new(2026, 7, 1, 22, 30, 0, TimeSpan.Zero);
    }
}
