namespace Refettle.Kits;

/// <summary>Width across flats of hexagon heads and nuts.</summary>
/// <remarks>Metric: ISO 4014 and ISO 4017, the same for ISO 4032 nuts (from memory). Older cars to DIN 931 and Japanese ones differ at
/// M10, M12 and M14. Unified: ASME B18.2.1 hex bolts (from memory); nuts of 7/16 and 9/16 in are one size larger.</remarks>
public static class HexHeads
{
    private static readonly (string Thread, string Size)[] _sizes =
    [
        ("M4", "7 mm"), ("M5", "8 mm"), ("M6", "10 mm"), ("M8", "13 mm"), ("M10", "16 mm"), ("M12", "18 mm"), ("M14", "21 mm"),
        ("M16", "24 mm"), ("M18", "27 mm"), ("M20", "30 mm"), ("M22", "34 mm"), ("M24", "36 mm"),
        ("1/4", "7/16 in"), ("5/16", "1/2 in"), ("3/8", "9/16 in"), ("7/16", "5/8 in"), ("1/2", "3/4 in"), ("9/16", "13/16 in"),
        ("5/8", "15/16 in"), ("3/4", "1-1/8 in"),
    ];

    /// <summary>The size in words (<c>16 mm</c>, <c>9/16 in</c>) for a thread like <c>M10x1.25</c> or <c>3/8-16
    /// UNC</c>; empty when not known.</summary>
    public static string Size(string? thread)
    {
        var nominal = thread?.Trim().Split('x', '×', '-', ' ')[0];
        return _sizes.FirstOrDefault(pair => pair.Thread.Equals(nominal, StringComparison.OrdinalIgnoreCase)).Size ?? "";
    }
}
