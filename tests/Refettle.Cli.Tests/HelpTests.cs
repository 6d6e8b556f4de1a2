using Refettle.Cli.Verbs;

namespace Refettle.Cli.Tests;

public sealed class HelpTests
{
    private const string Rows = "| `";

    [Fact]
    public void Verbs_stand_under_the_same_purposes_as_on_the_page() =>
        Assert.Equal(OnThePage(), VerbList.Groups.Select(group => $"{group.Purpose}: {string.Join(' ', group.Makers.Keys)}"));

    [Theory]
    [InlineData("--help")]
    [InlineData("-h")]
    [InlineData("--car", "stock", "--help")]
    [InlineData("frobnicate", "--help")]
    [InlineData("")]
    public void Each_verb_has_a_line_that_says_what_for(params string[] words)
    {
        using var bench = new Bench();
        var lines = bench.Out([.. words.Where(word => word.Length > 0)]).Split('\n');
        Assert.True(bench.Code == ExitCode.Good, bench.Error);
        Assert.All(VerbList.Groups, group => Assert.Single(lines, line => line == group.Purpose));
        Assert.All(VerbList.Makers.Keys, verb =>
        {
            var told = Assert.Single(lines, line => line.StartsWith($"  {verb} ", StringComparison.Ordinal));
            Assert.Matches(@"^  \S+ +\S.*[^.]$", told);
        });
    }

    [Fact]
    public void It_fits_a_narrow_terminal_and_loses_nothing()
    {
        Assert.All(At(width: 60).Split('\n'), line => Assert.True(line.Length <= 60, line));
        Assert.Equal(Words(At(width: 300)), Words(At(width: 60)));
    }

    [Fact]
    public void A_verb_tells_what_it_takes()
    {
        using var bench = new Bench();
        var help = bench.Out("reach", "--help");
        Assert.Contains("refettle reach <goal>", help, StringComparison.Ordinal);
        Assert.Contains("--without", help, StringComparison.Ordinal);
        Assert.DoesNotContain("unpair", help, StringComparison.Ordinal);
    }

    private static string At(int width)
    {
        using var bench = new Bench();
        using var shown = new StringWriter();
        new Shell(bench.Around with { Out = shown, Width = width }).Run(["--help"]);
        return shown.ToString();
    }

    private static string[] Words(string text) => text.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries);

    /// <summary>Each heading over a table that begins with verbs, and these in order.</summary>
    private static IEnumerable<string> OnThePage()
    {
        var page = File.ReadAllText(Path.Combine(Content.Folder(AppContext.BaseDirectory), "docs", "cli.md"));
        foreach (var section in page.Split("\n## ").Skip(1))
        {
            var cells = section.Split('\n').Where(line => line.StartsWith(Rows, StringComparison.Ordinal))
                .Select(row => row[2..].Split(" | ")[0]);
            var verbs = cells.SelectMany(cell => cell.Split('`').Where((_, place) => place % 2 == 1)).Select(code => code.Split(' ')[0])
                .Where(VerbList.Makers.ContainsKey).Distinct().ToList();
            if (verbs.Count > 0)
                yield return $"{section.Split('\n')[0]}: {string.Join(' ', verbs)}";
        }
    }
}
