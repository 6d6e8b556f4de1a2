namespace Refettle.Timeline.Network;

/// <summary>Who said how long a wait takes, and may be late.</summary>
public enum Promiser
{
    /// <summary>Nobody: a soak, a cure, what the owner set for himself.</summary>
    Nobody,

    Supplier,
    Shop,
}
