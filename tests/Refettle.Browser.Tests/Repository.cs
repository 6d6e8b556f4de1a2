namespace Refettle.Browser.Tests;

/// <summary>Where kits, ladders and samples lie.</summary>
internal static class Repository
{
    public static string Root => Above(AppContext.BaseDirectory);

    private static string Above(string folder) =>
        File.Exists(Path.Combine(folder, "Refettle.slnx")) ? folder : Above(Path.GetDirectoryName(folder)!);
}
