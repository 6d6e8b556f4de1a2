namespace Refettle.Logbook;

/// <summary>The ends of all chains of a log at one time: who holds it can tell later whether anything up to there was changed.</summary>
public sealed record Seal(ValueList<SealedEnd> Ends)
{
    public static Seal Of(IEnumerable<Entry> entries) => new(entries
        .GroupBy(entry => (entry.Car, entry.Device))
        .OrderBy(chain => chain.Key.Car, StringComparer.Ordinal).ThenBy(chain => chain.Key.Device, StringComparer.Ordinal)
        .Select(chain => chain.MaxBy(entry => entry.Sequence)!)
        .Select(end => new SealedEnd(end.Car, end.Device, end.Sequence, EntryHash.Of(end)))
        .ToValueList());

    public SealedEnd? EndOf(string car, string device) => Ends.FirstOrDefault(end => end.Car == car && end.Device == device);
}

/// <summary>The newest entry of one chain.</summary>
public sealed record SealedEnd(string Car, string Device, long Sequence, string Hash);
