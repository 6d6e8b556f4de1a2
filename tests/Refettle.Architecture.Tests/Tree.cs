namespace Refettle.Architecture.Tests;

/// <summary>The files of the project, without what is built or made while running.</summary>
internal static class Tree
{
    private static readonly string[] NotOurs =
        ["bin", "obj", ".git", ".vs", ".idea", "artifacts", "data", "TestResults", "StrykerOutput", "node_modules"];

    private static readonly string[] Text =
        [".cs", ".razor", ".css", ".js", ".html", ".csproj", ".props", ".targets", ".slnx", ".json", ".yaml", ".yml", ".md", ".txt", ".csv",
            ".commands", ".sh", ""];

    public static string Root { get; } = FindRoot();

    public static IEnumerable<string> TextFiles(string folder = ".") =>
        Files(Path.GetFullPath(Path.Combine(Root, folder))).Where(file => Text.Contains(Path.GetExtension(file)));

    public static string Name(string file) => Path.GetRelativePath(Root, file).Replace('\\', '/');

    private static IEnumerable<string> Files(string folder) =>
        Directory.EnumerateFiles(folder).Concat(
            Directory.EnumerateDirectories(folder).Where(inner => !NotOurs.Contains(Path.GetFileName(inner))).SelectMany(Files));

    private static string FindRoot()
    {
        var folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "Refettle.slnx")))
            folder = Path.GetDirectoryName(folder);
        return folder ?? throw new InvalidOperationException("Refettle.slnx is not above the tests.");
    }
}
