namespace Refettle.Logbook;

/// <summary>What the owner states about the car beside what was done to it.</summary>
public enum DeclarationTopic
{
    /// <summary>Something said for it.</summary>
    Claim,

    /// <summary>A known fault, or work that is left.</summary>
    Open,

    /// <summary>Result of a roadworthiness test.</summary>
    RoadTest,

    /// <summary>Ownership, registration, what is owed on it.</summary>
    Title,

    /// <summary>A maker's recall: done, or not.</summary>
    Recall,

    /// <summary>Something that is not as it left the works.</summary>
    Modification,
}

/// <summary>The owner states something. <c>declared</c></summary>
/// <param name="About">A thing (<c>part x</c>), or null for the whole car.</param>
/// <param name="Because">The entries that show it; empty when nothing does.</param>
public sealed record Declared(DeclarationTopic Topic, string Text, string? About, ValueList<Guid> Because) : Happening;
