namespace Refettle.Storage.Tables;

/// <summary>Under which name a device was paired that sent entries. It outlives the pairing.</summary>
internal sealed class WriterRow
{
    /// <summary>Its name in entries.</summary>
    public required string Device { get; init; }

    public required string Name { get; set; }
}
