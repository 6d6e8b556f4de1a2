using System.Text;

namespace Refettle.Storage.Tables;

/// <summary>An entry as it is kept. Rows are added and read, never changed.</summary>
internal sealed class EntryRow
{
    /// <summary>Given by the database in the order of arrival.</summary>
    public long Position { get; init; }

    public required Guid Id { get; init; }

    public required string Car { get; init; }

    public required string Device { get; init; }

    public required long Sequence { get; init; }

    /// <summary>Identifiers with a blank between them.</summary>
    public required string After { get; init; }

    public required string Salt { get; init; }

    public required string Previous { get; init; }

    /// <summary>Unix time in milliseconds.</summary>
    public required long At { get; init; }

    public required string Kind { get; init; }

    public required int Version { get; init; }

    public required string Payload { get; init; }

    public static EntryRow Of(Entry entry) => new()
    {
        Id = entry.Id,
        Car = entry.Car,
        Device = entry.Device,
        Sequence = entry.Sequence,
        After = string.Join(' ', entry.After.Select(id => id.ToString("D"))),
        Salt = entry.Salt,
        Previous = entry.Previous,
        At = entry.At.ToUnixTimeMilliseconds(),
        Kind = entry.Kind,
        Version = entry.Version,
        Payload = entry.Payload,
    };

    public Entry ToEntry() => new()
    {
        Id = Id,
        Car = Car,
        Device = Device,
        Sequence = Sequence,
        After = Cell.Identifiers(Encoding.UTF8.GetBytes(After)),
        Salt = Salt,
        Previous = Previous,
        At = Cell.Moment(At),
        Kind = Kind,
        Version = Version,
        Payload = Payload,
    };
}
