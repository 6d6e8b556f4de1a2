namespace Refettle.Storage.Tables;

/// <summary>The one row, with key 1, that names this machine in the entries it writes here.</summary>
internal sealed class IdentityRow
{
    public required int Key { get; init; }

    public required string Device { get; init; }
}
