namespace Refettle.Logbook;

/// <summary>How far a joint was tightened.</summary>
public enum Tightness
{
    /// <summary>Seated, so that it can still move to its final place; not torqued.</summary>
    Snug,

    Torqued,
}
