using System.Globalization;
using Refettle.Cli.Commands;
using Refettle.Cli.Verbs;

namespace Refettle.Cli.Tests;

public sealed class DocumentationTests
{
    private static readonly string _page = File.ReadAllText(Path.Combine(Content.Folder(AppContext.BaseDirectory), "docs", "cli.md"));

    [Fact]
    public void Every_verb_is_described() =>
        Assert.All(VerbList.Makers.Keys, verb => Assert.Contains($"`{verb}", _page, StringComparison.Ordinal));

    [Fact]
    public void Every_example_of_the_readme_is_understood()
    {
        var lines = File.ReadLines(Path.Combine(Content.Folder(AppContext.BaseDirectory), "README.md"))
            .Where(line => line.StartsWith("./run ", StringComparison.Ordinal) && !line.StartsWith("./run  ", StringComparison.Ordinal));
        var commands = CommandLines.Read(lines.Select(line => line["./run ".Length..]).ToArray()).Value;
        Assert.NotEmpty(commands);
        Assert.All(commands, command =>
        {
            using var empty = new Bench();
            Assert.True(empty.Run([.. command.Words]) != ExitCode.Usage, empty.Error);
        });
    }

    [Fact]
    public void Every_exit_code_is_described() =>
        Assert.All(Enum.GetValues<ExitCode>(),
            code => Assert.Contains($"| {((int)code).ToString(CultureInfo.InvariantCulture)} |", _page, StringComparison.Ordinal));
}
