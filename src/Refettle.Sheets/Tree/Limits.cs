namespace Refettle.Sheets.Tree;

/// <summary>How much is read before a file is refused. A sheet of 10,000 parts has about 10 MB, 3 levels inside
/// each thing and a million values.</summary>
internal static class Limits
{
    public const int Bytes = 32 * 1024 * 1024;

    public const int Depth = 12;

    public const int Values = 4_000_000;

    public const int ScalarLength = 4_000;

    /// <summary>More faults than this say nothing new.</summary>
    public const int Faults = 1_000;
}
