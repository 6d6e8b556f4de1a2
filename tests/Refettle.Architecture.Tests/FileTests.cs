namespace Refettle.Architecture.Tests;

public sealed class FileTests
{
    private const int MostLines = 250;
    private const int MostColumns = 140;

    [Fact]
    public void No_source_file_is_longer_than_250_lines()
    {
        string[] source = [".cs", ".razor", ".css", ".js"];
        var files = Tree.TextFiles("src").Where(file => source.Contains(Path.GetExtension(file))).ToList();
        Assert.NotEmpty(files);
        Assert.Empty(files.Where(file => File.ReadLines(file).Count() > MostLines).Select(Tree.Name));
    }

    /// <summary>Half a wide screen. What is said to a reader stays in one piece: a line with a text in it may be longer.</summary>
    [Fact]
    public void No_line_of_code_is_longer_than_140_columns()
    {
        var files = Tree.TextFiles()
            .Where(file => file.EndsWith(".cs", StringComparison.Ordinal)
                && !Tree.Name(file).Contains("/Migrations/", StringComparison.Ordinal)).ToList();
        Assert.NotEmpty(files);
        Assert.Empty(
            files.SelectMany(file => OutsideRawTexts(file).Where(line => line.Text.Length > MostColumns && !line.Text.Contains('"'))
            .Select(line => $"{Tree.Name(file)}:{line.Number}")));
    }

    [Fact]
    public void No_file_names_a_place_of_one_persons_machine()
    {
        var paths = BannedFolders().SelectMany(folder => new[] { $"/{folder}/", $@"C:\{folder}" }).ToList();
        Assert.NotEmpty(paths);
        Assert.Empty(Tree.TextFiles().SelectMany(file => Finds(file, paths)));
    }

    /// <summary>A merge that was left half done shows on pages and in documents, where no compiler looks.</summary>
    [Fact]
    public void No_merge_is_left_half_done()
    {
        string[] marks = [new('<', 7), new('>', 7)];
        Assert.Empty(Tree.TextFiles().Where(file => File.ReadLines(file).Any(line => marks.Any(line.StartsWith))).Select(Tree.Name));
    }

    [Fact]
    public void Every_project_is_in_the_solution()
    {
        var solution = File.ReadAllText(Path.Combine(Tree.Root, "Refettle.slnx"));
        var projects = Tree.TextFiles().Where(file => file.EndsWith(".csproj", StringComparison.Ordinal)).Select(Tree.Name).ToList();
        Assert.NotEmpty(projects);
        Assert.All(projects, project => Assert.Contains($"\"{project}\"", solution, StringComparison.Ordinal));
    }

    private static IEnumerable<(int Number, string Text)> OutsideRawTexts(string file)
    {
        var isRaw = false;
        foreach (var (index, line) in File.ReadLines(file).Index())
        {
            if (!isRaw)
                yield return (index + 1, line);
            isRaw ^= line.Split("\"\"\"").Length % 2 == 0;
        }
    }

    private static IEnumerable<string> Finds(string file, IReadOnlyCollection<string> words) =>
        File.ReadLines(file).SelectMany((line, index) => words
            .Where(word => line.Contains(word, StringComparison.OrdinalIgnoreCase))
            .Select(word => $"{Tree.Name(file)}:{index + 1}: {word}"));

    private static List<string> BannedFolders()
    {
        using var stream = typeof(FileTests).Assembly.GetManifestResourceStream("banned-folders.txt")!;
        using var reader = new StreamReader(stream);
        return [.. reader.ReadToEnd().Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
            .Where(line => line[0] != '#')];
    }
}
