namespace Refettle.Cli.Tests.QuickLines;

/// <summary>A line as someone would say it, what kind it is, and the things that are right.</summary>
internal sealed record SaidLine(string Line, string Kind, string[] Right)
{
    public const string ToTuneBy = "to-tune-by.tsv";
    public const string KeptApart = "kept-apart.tsv";

    public static SaidLine[] Of(string file) => [.. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "QuickLines", file))
        .Where(line => line.Length > 0 && line[0] != '#').Select(line => line.Split('\t'))
        .Select(cells => new SaidLine(cells[0], cells[1], cells[2].Split('|')))];
}
