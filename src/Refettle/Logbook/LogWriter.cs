using System.Security.Cryptography;

namespace Refettle.Logbook;

/// <summary>Makes the entries of one device.</summary>
/// <param name="device">This device's identifier.</param>
/// <param name="random">Cryptographic outside of tests: the salts must not be guessable.</param>
public sealed class LogWriter(string device, TimeProvider clock, RandomNumberGenerator random)
{
    private const int SaltBytes = 32;

    public string Device => device;

    /// <summary>The next entry about a car.</summary>
    public Entry Next(string car, LogEnd end, Happening happening) => Next(car, end, happening, Now);

    /// <summary>The next entries about a car, each after the one before and all of one moment: so it
    /// can be seen that they were written together (<see cref="WrittenTogether"/>).</summary>
    public ValueList<Entry> Next(string car, LogEnd end, IEnumerable<Happening> happenings)
    {
        var (entries, at) = (new List<Entry>(), Now);
        foreach (var happening in happenings)
        {
            entries.Add(Next(car, end, happening, at));
            end = new(entries[^1], []);
        }

        return entries.ToValueList();
    }

    private DateTimeOffset Now => DateTimeOffset.FromUnixTimeMilliseconds(clock.GetUtcNow().ToUnixTimeMilliseconds());

    private Entry Next(string car, LogEnd end, Happening happening, DateTimeOffset at)
    {
        var (kind, version) = Happenings.KindOf(happening);
        return new()
        {
            Id = NewId(at),
            Car = car,
            Device = device,
            Sequence = (end.Own?.Sequence ?? 0) + 1,
            After = After(end, happening),
            Salt = Convert.ToHexStringLower(Bytes(SaltBytes)),
            Previous = end.Own is null ? "" : EntryHash.Of(end.Own),
            At = at,
            Kind = kind,
            Version = version,
            Payload = Happenings.Encode(happening),
        };
    }

    /// <summary>A strike always names its target as well, so that it sorts after it even where the entries between are missing.</summary>
    private static ValueList<Guid> After(LogEnd end, Happening happening) =>
        happening is Struck strike && !end.News.Contains(strike.Target) ? [.. end.News, strike.Target] : end.News;

    /// <summary>UUID version 7 after RFC 9562 §5.7: 48 bits of Unix milliseconds, the rest random.</summary>
    private Guid NewId(DateTimeOffset at)
    {
        var bytes = Bytes(16);
        var milliseconds = Math.Max(0, at.ToUnixTimeMilliseconds());
        for (var i = 0; i < 6; i++)
            bytes[i] = (byte)(milliseconds >> (40 - (8 * i)));
        bytes[6] = (byte)(0x70 | (bytes[6] & 0x0F));
        bytes[8] = (byte)(0x80 | (bytes[8] & 0x3F));
        return new(bytes, bigEndian: true);
    }

    private byte[] Bytes(int count)
    {
        var bytes = new byte[count];
        random.GetBytes(bytes);
        return bytes;
    }
}
