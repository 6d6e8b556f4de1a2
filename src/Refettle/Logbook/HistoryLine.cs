namespace Refettle.Logbook;

/// <summary>What an entry counts for today.</summary>
public enum Standing
{
    InForce,

    /// <summary>A later entry that is in force strikes it.</summary>
    Struck,

    /// <summary>Its kind or version is not known to this program. It is kept and changes nothing.</summary>
    FromNewerVersion,

    /// <summary>It does not fit the car as it then stood; <see cref="HistoryLine.Reason"/> says why.</summary>
    NotApplied,
}

/// <summary>An entry in its place, with what it counts for.</summary>
/// <param name="Happening">What it tells; null where it cannot be read.</param>
/// <param name="Reason">Why it was not applied; null otherwise.</param>
public sealed record HistoryLine(Entry Entry, Happening? Happening, Standing Standing, string? Reason)
{
    /// <summary>What went with it: the joints, spaces and sub-assemblies that a removal left without parts.</summary>
    public ValueList<string> AlsoRemoved { get; init; } = [];

    /// <summary>It marks a step that was done, or taken back, already: no work. It may tell what the first mark took.</summary>
    public bool ChangesNothing { get; init; }
}
