using System.Globalization;
using Refettle.Cli.Verbs;

namespace Refettle.Cli.Tests;

public sealed class DocumentationTests
{
    private static readonly string _page = File.ReadAllText(Path.Combine(Content.Folder(AppContext.BaseDirectory), "docs", "cli.md"));

    [Fact]
    public void Every_verb_is_described() =>
        Assert.All(VerbList.Makers.Keys, verb => Assert.Contains($"`{verb}", _page, StringComparison.Ordinal));

    [Fact]
    public void Every_exit_code_is_described() =>
        Assert.All(Enum.GetValues<ExitCode>(), code => Assert.Contains($"| {((int)code).ToString(CultureInfo.InvariantCulture)} |", _page, StringComparison.Ordinal));
}
