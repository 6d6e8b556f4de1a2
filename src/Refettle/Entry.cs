namespace Refettle;

/// <summary>One line of a logbook. It is never changed; a later entry may strike it.</summary>
/// <remarks>Order comes from <see cref="After"/> and the device's own sequence, never from <see cref="At"/>:
/// a clock that is a day off changes nothing.</remarks>
public sealed record Entry
{
    /// <summary>UUID version 7.</summary>
    public required Guid Id { get; init; }

    public required string Car { get; init; }

    /// <summary>The device that wrote it; each device has a chain of its own for each car.</summary>
    public required string Device { get; init; }

    /// <summary>1 for a device's first entry about the car, then one more each.</summary>
    public required long Sequence { get; init; }

    /// <summary>The newest entries of other devices that the writer knew of.</summary>
    public ValueList<Guid> After { get; init; } = [];

    /// <summary>32 random bytes in hexadecimal: lets a field be blacked out later without breaking the chain.</summary>
    public required string Salt { get; init; }

    /// <summary>Hash of the device's previous entry in hexadecimal; empty for its first.</summary>
    public required string Previous { get; init; }

    /// <summary>The device's clock when it was written; for reading only.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>What the payload tells of: <c>step-done</c>, <c>kit-added</c> …</summary>
    public required string Kind { get; init; }

    /// <summary>Version of the payload's form.</summary>
    public required int Version { get; init; }

    /// <summary>The payload as JSON text, kept letter for letter, also when its kind is not known here.</summary>
    public required string Payload { get; init; }
}
