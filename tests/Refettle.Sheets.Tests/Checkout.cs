namespace Refettle.Sheets.Tests;

/// <summary>The folders of the checkout that the tests run from.</summary>
internal static class Checkout
{
    public static string Root { get; } = Find(AppContext.BaseDirectory);

    public static string Kits => Path.Combine(Root, "kits");

    public static string Samples => Path.Combine(Root, "samples");

    public static KitShelf Shelf { get; } = KitShelf.Load(Kits).Value;

    private static string Find(string folder) =>
        File.Exists(Path.Combine(folder, "Refettle.slnx")) ? folder : Find(Path.GetDirectoryName(folder)!);
}
