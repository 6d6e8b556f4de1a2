namespace Refettle.Cli.Tests.Verbs;

public sealed class TaskVerbTests
{
    /// <summary>It is written all the same: plans change, and such a task may come.</summary>
    [Fact]
    public void A_name_that_no_task_has_is_told_of_at_once()
    {
        using var bench = Planned();
        Assert.Equal(ExitCode.Good, bench.Run("task", "takes", "strip.axl", "30"));
        Assert.Contains("no task is called that now", Flat(bench.Error), StringComparison.Ordinal);
        Assert.Contains("Did you mean strip.axle", Flat(bench.Error), StringComparison.Ordinal);
        Assert.Contains("strip.axl", bench.Out("spell", "list"), StringComparison.Ordinal);
        Tells(bench, true, "task", "fix", "nope", "+3d", "18:30");
        Tells(bench, true, "task", "uses", "nope");
        Tells(bench, true, "task", "add", "wash", "--minutes", "30", "--after", "nope");
        Tells(bench, false, "task", "add", "wash", "--after", "strip.axle");
        Tells(bench, false, "task", "fix", "wash", "+3d", "18:30");
        Tells(bench, false, "task", "takes", "strip.axle", "30");
    }

    [Fact]
    public void A_task_of_yours_is_called_by_its_title_where_another_follows_it()
    {
        using var bench = Planned();
        bench.Run("task", "add", "wash", "--minutes", "30", "--name", "Wash it");
        bench.Run("task", "add", "dry", "--minutes", "30", "--after", "wash");
        Assert.Contains("after Wash it", Flat(bench.Out("spell", "list")), StringComparison.Ordinal);
    }

    private static void Tells(Bench bench, bool isUnknown, params string[] words)
    {
        Assert.True(bench.Run(words) == ExitCode.Good, bench.Error);
        Assert.Equal(isUnknown, Flat(bench.Error).Contains("no task is called that now", StringComparison.Ordinal));
    }

    private static Bench Planned()
    {
        var bench = new Bench().WithCar();
        bench.Run("spell", "add", "evenings", "--on", "daily", "--from", "18:30", "--until", "21:30");
        bench.Run("job", "add", "clips", "goals=off(axle)", "worth=100", "work=5 min");
        bench.Run("choose", "clips");
        return bench;
    }

    private static string Flat(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
