namespace Refettle.Cli;

/// <summary>Finds the kits and samples that came with the program.</summary>
internal static class Content
{
    /// <summary>The nearest folder from the program's own upwards that has <c>kits</c>.</summary>
    public static string Folder(string program)
    {
        for (var folder = program; folder is not null; folder = Path.GetDirectoryName(folder))
        {
            if (Directory.Exists(Path.Combine(folder, "kits")))
                return folder;
        }

        return program;
    }
}
