using Refettle.Peers.Projects;

namespace Refettle.Solvers.Tests.Published;

/// <summary>Published instances, in a folder beside the checkout or where REFETTLE_SHARED says.</summary>
internal static class SharedData
{
    public static string? Folder { get; } = Candidates().FirstOrDefault(folder => Directory.Exists(Path.Combine(folder, "data")));

    public static string Read(params string[] path) => File.ReadAllText(Path.Combine([Folder!, "data", .. path]));

    /// <summary>The published finishes of one set of projects.</summary>
    public static IReadOnlyDictionary<string, PublishedFinish> Finishes(string collection, string set)
    {
        using var text = new StringReader(Read(collection, "best_known.csv"));
        return PublishedFinish.Read(text, set);
    }

    private static IEnumerable<string> Candidates()
    {
        if (Environment.GetEnvironmentVariable("REFETTLE_SHARED") is { Length: > 0 } named)
            yield return named;
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Refettle.slnx")))
                yield return Path.Combine(folder.FullName, "..", "shared");
        }
    }
}

/// <summary>A theory that is skipped where the published instances are not at hand.</summary>
public sealed class SharedDataTheoryAttribute : TheoryAttribute
{
    public SharedDataTheoryAttribute() =>
        Skip = SharedData.Folder is null ? "The folder ../shared/data with the published instances is not there." : null;
}
