using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Cli.Commands;
using Refettle.Solvers;

namespace Refettle.Cli.Tests;

/// <summary>What a newcomer is told to type works, and answers as the page shows.</summary>
public sealed class WalkTests
{
    [Fact]
    public void Every_command_of_the_first_car_answers_as_shown()
    {
        using var bench = new Bench(() => new AccessPlanner(new ReducedSolver(new MixedIntegerSolver())));
        var page = File.ReadAllLines(Path.Combine(bench.Around.Content, "docs", "first-car.md"));
        var commands = page.Index().Where(line => line.Item.StartsWith("$ ./run ", StringComparison.Ordinal)).ToList();
        Assert.NotEmpty(commands);
        foreach (var (at, command) in commands)
        {
            var words = CommandLines.Split(command["$ ./run ".Length..])!.Select(word => word == "my-car.yaml" ? bench.Beside(word) : word);
            var answer = bench.Out([.. words]);
            Assert.True(bench.Code is ExitCode.Good or ExitCode.Impossible, $"{command}: {bench.Error}");
            foreach (var shown in page.Skip(at + 1).TakeWhile(line => !line.StartsWith("```", StringComparison.Ordinal) && !line.StartsWith("$ ", StringComparison.Ordinal)))
                Assert.True(shown == "…" || Holds(answer, shown), $"{command}: {shown} is not in\n{answer}");
        }
    }

    /// <summary>Lines are wrapped and tables spaced by the width of the terminal: only the words count.</summary>
    private static bool Holds(string answer, string shown) => Words(answer).Contains(Words(shown), StringComparison.Ordinal);

    private static string Words(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
