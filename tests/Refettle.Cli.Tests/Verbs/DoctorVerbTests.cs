namespace Refettle.Cli.Tests.Verbs;

public sealed class DoctorVerbTests
{
    [Fact]
    public void A_sound_set_up_is_called_so()
    {
        using var bench = new Bench().WithCar();
        Assert.Equal(ExitCode.Good, bench.Run("doctor"));
        Assert.DoesNotContain("WRONG", bench.Out("doctor"), StringComparison.Ordinal);
        Assert.Contains("chains unbroken", bench.Out("doctor"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_is_no_store_is_wrong_and_stays_as_it_is()
    {
        using var bench = new Bench();
        var file = bench.Beside("other.db");
        File.WriteAllText(file, new string('x', 5000));
        Assert.Equal(ExitCode.Faults, bench.Run("doctor", "--store", file));
        Assert.Contains("WRONG", bench.Out("doctor", "--store", file), StringComparison.Ordinal);
        Assert.Equal(new string('x', 5000), File.ReadAllText(file));
    }

    [Fact]
    public void Missing_content_is_wrong_and_says_what_to_do()
    {
        using var bench = new Bench();
        using var output = new StringWriter();
        var code = new Shell(bench.Around with { Out = output, Content = Path.Combine(Path.GetTempPath(), "no such folder") })
            .Run(["doctor"]);
        Assert.Equal(ExitCode.Faults, code);
        Assert.Contains("Install the program anew", output.ToString(), StringComparison.Ordinal);
    }

    /// <summary>The clock goes back a day after the entries were written.</summary>
    [Fact]
    public void A_clock_that_went_back_is_minded_and_told_in_the_log()
    {
        using var bench = new Bench().WithCar();
        using var output = new StringWriter();
        using var error = new StringWriter();
        var shell = bench.Around with { Out = output, Error = error, Clock = new DayBehind() };
        Assert.Equal(ExitCode.Good, new Shell(shell).Run(["doctor"]));
        Assert.Contains("1 day before its own newest entry", output.ToString().ReplaceLineEndings(" "), StringComparison.Ordinal);
        new Shell(shell).Run(["log"]);
        Assert.Contains("this device's clock stands 1 day before its own newest entry", error.ToString().ReplaceLineEndings(" "),
            StringComparison.Ordinal);
    }

    private sealed class DayBehind : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => System.GetUtcNow().AddDays(-1);
    }

    [Fact]
    public void A_changed_entry_is_found()
    {
        using var bench = new Bench().WithCar();
        using (var connection = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={bench.Around.Store};Pooling=False"))
        {
            connection.Open();
            using var command = connection.CreateCommand();
            command.CommandText = "UPDATE Entries SET At = At + 1000 WHERE Position = 1";
            command.ExecuteNonQuery();
        }

        Assert.Equal(ExitCode.Faults, bench.Run("doctor"));
    }
}
