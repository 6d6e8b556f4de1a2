namespace Refettle.Storage.Tables;

/// <summary>The one row that names this machine in the entries it writes here.</summary>
internal sealed class IdentityRow
{
    public const int TheOne = 1;

    public int Key { get; init; } = TheOne;

    public required string Device { get; set; }
}
