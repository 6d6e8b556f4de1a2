using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Cli.Commands;
using Refettle.Solvers;

namespace Refettle.Cli.Tests.Verbs;

public sealed class DemoVerbTests
{
    private const int MostCommands = 60;

    [Fact]
    public void A_whole_car_of_250_parts_and_600_joints_takes_at_most_60_commands()
    {
        using var bench = new Bench();
        var script = Path.Combine(bench.Around.Content, "samples", "estate.commands");
        string[] describe = ["new", "add", "set", "tie", "block", "remove", "mirror", "sheet"];
        var commands = CommandLines.Read(File.ReadAllLines(script)).Value.Where(line => describe.Contains(line.Words[0])).ToList();
        Assert.InRange(commands.Count, 1, MostCommands);
        Assert.True(bench.Run("script", script) == ExitCode.Good, bench.Error);
        var counts = bench.Json("show").GetProperty("counts");
        Assert.InRange(counts.GetProperty("parts").GetInt32(), 250, int.MaxValue);
        Assert.InRange(counts.GetProperty("joints").GetInt32(), 600, int.MaxValue);
    }

    [Fact]
    public void The_demo_makes_both_cars_once_and_proves_a_plan()
    {
        using var bench = new Bench(() => new AccessPlanner(new ReducedSolver(new MixedIntegerSolver())));
        var plan = bench.Json("demo").GetProperty("plan");
        Assert.True(bench.Code == ExitCode.Good, bench.Error);
        Assert.Equal("optimal", plan.GetProperty("status").GetString());
        Assert.Equal("free(rear-axle)", plan.GetProperty("goals")[0].GetString());
        var entries = bench.Json("log", "--most", "0").GetProperty("lines").GetArrayLength();
        Assert.Equal(2, bench.Json("cars").GetProperty("cars").GetArrayLength());
        bench.Run("demo");
        Assert.Equal(entries, bench.Json("log", "--most", "0").GetProperty("lines").GetArrayLength());
    }
}
