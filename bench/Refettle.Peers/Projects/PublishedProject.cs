using Refettle.Timeline;

namespace Refettle.Peers.Projects;

/// <summary>Reads published project-scheduling instances by the ending of their name.</summary>
public static class PublishedProject
{
    public static readonly IReadOnlyList<string> Endings = [".sm", ".sch"];

    /// <summary>The instances of a folder, in the order of the numbers in their names.</summary>
    public static IReadOnlyList<string> Files(string folder) =>
        [.. Directory.EnumerateFiles(folder).Where(file => Endings.Contains(Path.GetExtension(file).ToLowerInvariant()))
            .OrderBy(file => string.Join(' ', Path.GetFileNameWithoutExtension(file).Split('_').Select(word => word.PadLeft(12, '0'))),
                StringComparer.Ordinal)];

    public static Project Read(string file) => Parse(File.ReadAllText(file), Path.GetExtension(file));

    /// <exception cref="FormatException">The text is no instance of that kind.</exception>
    public static Project Parse(string text, string ending) => ending.ToLowerInvariant() switch
    {
        ".sm" => SingleMode.Parse(text),
        ".sch" => GeneralLags.Parse(text),
        _ => throw new FormatException($"'{ending}' is neither .sm nor .sch"),
    };
}
