using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Cli.Commands;
using Refettle.Solvers;

namespace Refettle.Cli.Tests;

public sealed class WalkTests
{
    /// <summary>What a newcomer is told to type works, from the first line to the last.</summary>
    [Fact]
    public void Every_command_of_the_walk_works()
    {
        using var bench = new Bench(() => new AccessPlanner(new ReducedSolver(new MixedIntegerSolver())));
        var lines = File.ReadAllLines(Path.Combine(bench.Around.Content, "docs", "walk.md"))
            .Where(line => line.StartsWith("refettle ", StringComparison.Ordinal)).ToList();
        Assert.NotEmpty(lines);
        foreach (var line in lines)
            Assert.True(bench.Run([.. CommandLines.Split(line)!.Skip(1)]) == ExitCode.Good, $"{line}: {bench.Error}");
    }
}
