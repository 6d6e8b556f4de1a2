namespace Refettle.Logbook;

/// <summary>What is wrong with a device's chain at one place.</summary>
public enum ChainBreakKind
{
    /// <summary>An entry is not the one that the next was written after.</summary>
    Changed,

    /// <summary>An entry is missing between others, or at the beginning, or at the end that a seal names.</summary>
    Removed,

    /// <summary>An entry has the number of another and nothing was written after it.</summary>
    Inserted,
}

/// <summary>One place where a chain does not hold.</summary>
/// <param name="Sequence">The number of the entry at fault; of a run of missing entries the first.</param>
/// <param name="Entry">The entry at fault; null when it is missing.</param>
public sealed record ChainBreak(ChainBreakKind Kind, string Car, string Device, long Sequence, Guid? Entry, string Found)
{
    public Fault ToFault() =>
        new($"entry {Sequence} of device {Device} about {Car}", Found, "Compare with another device's copy or a backup.");
}

/// <summary>Verifies the chains of a log. Without a seal nothing vouches for the newest entry of each chain.</summary>
/// <remarks>It shows changes; it cannot show that what was entered was true.</remarks>
public static class ChainCheck
{
    public static ValueList<ChainBreak> Of(IEnumerable<Entry> entries, Seal? seal = null)
    {
        var breaks = new List<ChainBreak>();
        var chains = entries.DistinctBy(entry => (entry.Id, EntryHash.Of(entry))).ToLookup(entry => (entry.Car, entry.Device));
        var keys = chains.Select(chain => chain.Key).Union(seal?.Ends.Select(end => (end.Car, end.Device)) ?? []);
        foreach (var key in keys.Order())
            breaks.AddRange(new Chain(key.Car, key.Device, chains[key]).Breaks(seal?.EndOf(key.Car, key.Device)));
        return breaks.ToValueList();
    }

    private sealed class Chain(string car, string device, IEnumerable<Entry> entries)
    {
        private readonly List<Link[]> _numbers =
            [.. entries.GroupBy(entry => entry.Sequence).OrderBy(number => number.Key)
                .Select(number => number.Select(entry => new Link(entry, EntryHash.Of(entry))).ToArray())];

        public IEnumerable<ChainBreak> Breaks(SealedEnd? end) => Beginning().Concat(Links()).Concat(End(end));

        private IEnumerable<ChainBreak> Beginning()
        {
            if (_numbers.Count == 0)
                yield break;
            var first = _numbers[0][0].Entry;
            if (first.Sequence > 1)
                yield return Break(ChainBreakKind.Removed, 1, null, $"entries 1 to {first.Sequence - 1} are missing");
            else if (first.Previous.Length > 0)
                yield return Break(ChainBreakKind.Changed, 1, first.Id, "it is numbered first but names an entry before it");
        }

        private IEnumerable<ChainBreak> Links()
        {
            for (var i = 0; i < _numbers.Count; i++)
            {
                var here = _numbers[i];
                var next = i + 1 < _numbers.Count ? _numbers[i + 1] : null;
                var number = here[0].Entry.Sequence;
                var isFollowed = next is not null && next[0].Entry.Sequence == number + 1;
                if (next is not null && !isFollowed)
                    yield return Break(ChainBreakKind.Removed, number + 1, null,
                        $"entries {number + 1} to {next[0].Entry.Sequence - 1} are missing");
                foreach (var found in isFollowed ? Followed(here, next!) : Doubled(here, here.Length > 1))
                    yield return found;
            }
        }

        private IEnumerable<ChainBreak> Followed(Link[] here, Link[] next)
        {
            var named = next.Select(link => link.Entry.Previous).ToHashSet();
            var loose = here.Where(link => !named.Contains(link.Hash)).ToArray();
            if (loose.Length < here.Length)
                return Doubled(loose, true);
            return loose.Select(link => Break(
                ChainBreakKind.Changed, link.Entry.Sequence, link.Entry.Id,
                $"it is not the entry that entry {link.Entry.Sequence + 1} was written after"));
        }

        private IEnumerable<ChainBreak> Doubled(Link[] links, bool isDoubled) => !isDoubled ? [] : links.Select(link => Break(
            ChainBreakKind.Inserted, link.Entry.Sequence, link.Entry.Id,
            "another entry has its number, and nothing was written after this one"));

        private IEnumerable<ChainBreak> End(SealedEnd? end)
        {
            if (end is null)
                yield break;
            var last = _numbers.Find(number => number[0].Entry.Sequence == end.Sequence);
            var newest = _numbers.Count == 0 ? 0 : _numbers[^1][0].Entry.Sequence;
            if (newest < end.Sequence)
                yield return Break(ChainBreakKind.Removed, newest + 1, null,
                    $"entries {newest + 1} to {end.Sequence} are missing at the end");
            else if (last is not null && !last.Any(link => link.Hash == end.Hash))
                yield return Break(ChainBreakKind.Changed, end.Sequence, last[0].Entry.Id, "it is not the entry that was sealed");
        }

        private ChainBreak Break(ChainBreakKind kind, long sequence, Guid? entry, string found) =>
            new(kind, car, device, sequence, entry, found);
    }

    private readonly record struct Link(Entry Entry, string Hash);
}
