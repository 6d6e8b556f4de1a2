using Refettle.Logbook;

namespace Refettle.SaleFile.Sealing;

/// <summary>An entry as it is given away: whole, with salt and payload, or field by field with some
/// of them blacked out and no salt.</summary>
public sealed record GivenEntry
{
    public required Guid Id { get; init; }

    public required string Car { get; init; }

    public required string Device { get; init; }

    public required long Sequence { get; init; }

    public ValueList<Guid> After { get; init; } = [];

    public required string Previous { get; init; }

    public required DateTimeOffset At { get; init; }

    public required string Kind { get; init; }

    public required int Version { get; init; }

    /// <summary>Null when a field is blacked out: the salt would open it.</summary>
    public string? Salt { get; init; }

    public string? Payload { get; init; }

    /// <summary>All fields in the order in which they are hashed; null when the entry is given whole.</summary>
    public ValueList<GivenField>? Fields { get; init; }

    /// <param name="isHidden">Asked for each field, by name and JSON text.</param>
    public static GivenEntry Of(Entry entry, Func<string, string, bool> isHidden)
    {
        var fields = PayloadField.Of(entry);
        var given = fields.Select(field => isHidden(field.Name, field.Text!) ? field.BlackedOut() : field).ToValueList();
        var bare = Bare(entry);
        return given.Equals(fields)
            ? bare with { Salt = entry.Salt, Payload = entry.Payload }
            : bare with { Fields = given.Select(GivenField.Of).ToValueList() };
    }

    /// <summary>The entry's hash, as <see cref="EntryHash"/> has it for the entry that was written; null when
    /// this is neither whole nor fields.</summary>
    public string? Hash() => (Salt, Payload, Fields) switch
    {
        ({ } salt, { } payload, null) => EntryHash.Of(Headed(salt, payload)),
        (null, null, { } fields) => EntryHash.Of(Headed("", ""), fields.Select(field => field.Sealed()).ToValueList()),
        _ => null,
    };

    private static GivenEntry Bare(Entry entry) => new()
    {
        Id = entry.Id,
        Car = entry.Car,
        Device = entry.Device,
        Sequence = entry.Sequence,
        After = entry.After,
        Previous = entry.Previous,
        At = entry.At,
        Kind = entry.Kind,
        Version = entry.Version,
    };

    private Entry Headed(string salt, string payload) => new()
    {
        Id = Id,
        Car = Car,
        Device = Device,
        Sequence = Sequence,
        After = After,
        Salt = salt,
        Previous = Previous,
        At = At,
        Kind = Kind,
        Version = Version,
        Payload = payload,
    };
}

/// <summary>A payload's field as it is given away: text with what opens its commitment, or the commitment alone.</summary>
public sealed record GivenField(string Name, string? Text, string? Blinding, string? Commitment)
{
    internal static GivenField Of(PayloadField field) =>
        field.Text is null ? new(field.Name, null, null, field.Commitment) : new(field.Name, field.Text, field.Blinding, null);

    /// <summary>With the commitment that the text calls for; a field that says nothing gets one that fits nothing.</summary>
    internal PayloadField Sealed() => Text is null || Blinding is null
        ? new(Name, null, null, Commitment ?? "")
        : new(Name, Text, Blinding, PayloadField.Commit(Blinding, Text));
}
