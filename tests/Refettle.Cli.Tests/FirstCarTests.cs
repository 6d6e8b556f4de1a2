using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Cli.Commands;
using Refettle.Solvers;

namespace Refettle.Cli.Tests;

/// <summary>Follows the walk in <c>docs/first-car.md</c>: what is printed there is what the program says.</summary>
public sealed class FirstCarTests
{
    private const string Prompt = "$ ./run ";
    private const string LeftOut = "…";

    [Fact]
    public void The_walk_goes_as_printed()
    {
        using var bench = new Bench(() => new AccessPlanner(new ReducedSolver(new MixedIntegerSolver())));
        foreach (var (command, printed) in Steps(bench))
        {
            var words = CommandLines.Split(command)!.Select(word => word == "my-car.yaml" ? bench.File(word, "") : word).ToArray();
            var said = Words(bench.Out(words));
            Assert.True(bench.Code is ExitCode.Good or ExitCode.Impossible, $"{command}: {bench.Error}");
            Assert.True(IsSaid(printed, said), $"{command} says\n{said}\nand the page says\n{printed}");
        }
    }

    private static IEnumerable<(string Command, string Printed)> Steps(Bench bench)
    {
        var isConsole = false;
        (string Command, string Printed)? step = null;
        foreach (var line in File.ReadAllLines(Path.Combine(bench.Around.Content, "docs", "first-car.md")).Append("```"))
        {
            if (step is not null && (line.StartsWith("```", StringComparison.Ordinal) || line.StartsWith(Prompt, StringComparison.Ordinal)))
            {
                yield return step.Value;
                step = null;
            }

            isConsole = line.StartsWith("```", StringComparison.Ordinal) ? line == "```console" : isConsole;
            if (isConsole && line.StartsWith(Prompt, StringComparison.Ordinal))
                step = (line[Prompt.Length..], "");
            else if (step is not null)
                step = (step.Value.Command, step.Value.Printed + line + "\n");
        }
    }

    /// <summary>Whether the printed words are the said ones in order, however lines are broken; an ellipsis
    /// stands for any number of words.</summary>
    private static bool IsSaid(string printed, string said)
    {
        var pieces = printed.Split(LeftOut).Select(Words).ToArray();
        var at = 0;
        foreach (var piece in pieces)
        {
            at = said.IndexOf(piece, at, StringComparison.Ordinal);
            if (at < 0)
                return false;
            at += piece.Length;
        }

        return said.StartsWith(pieces[0], StringComparison.Ordinal) && (pieces[^1].Length == 0 || at == said.Length);
    }

    private static string Words(string text) =>
        string.Join(' ', text.Split((char[])[' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries));
}
