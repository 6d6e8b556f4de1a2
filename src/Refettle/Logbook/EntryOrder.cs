namespace Refettle.Logbook;

/// <summary>Entries in the one order that everybody who has the same entries agrees on.</summary>
/// <param name="Faults">Chains that fork and references that run in a circle. All entries are in the order nevertheless.</param>
public sealed record OrderedEntries(IReadOnlyList<Entry> Entries, ValueList<Fault> Faults);

/// <summary>Orders entries by causal links alone. An entry's depth is one more than the greatest depth among the entry before it in
/// its device's chain and those it names in <see cref="Entry.After"/>; entries are sorted by depth, then device, then sequence.
/// No clock is looked at. References to entries that are not there are left out of account.</summary>
public static class EntryOrder
{
    public static OrderedEntries Of(IEnumerable<Entry> entries)
    {
        var faults = new List<Fault>();
        var byId = Distinct(entries, faults);
        var chained = InChains(byId.Values);
        var order = new DepthOrder(chained, faults).DepthAndPlace();
        Array.Sort(order, chained);
        return new(chained, faults.ToValueList());
    }

    private static Dictionary<Guid, Entry> Distinct(IEnumerable<Entry> entries, List<Fault> faults)
    {
        var byId = new Dictionary<Guid, Entry>(entries.TryGetNonEnumeratedCount(out var count) ? count : 0);
        foreach (var entry in entries)
        {
            if (byId.TryAdd(entry.Id, entry) || byId[entry.Id] == entry)
                continue;
            faults.Add(new($"entry {entry.Id}", "there are two of it that differ", "Compare the devices: one copy was changed."));
            if (string.CompareOrdinal(EntryHash.Of(entry), EntryHash.Of(byId[entry.Id])) < 0)
                byId[entry.Id] = entry;
        }

        return byId;
    }

    private static Entry[] InChains(ICollection<Entry> entries)
    {
        var chains = new SortedDictionary<string, List<Entry>>(StringComparer.Ordinal);
        foreach (var entry in entries)
            (chains.TryGetValue(entry.Device, out var chain) ? chain : chains[entry.Device] = []).Add(entry);
        foreach (var chain in chains.Values.Where(chain => !IsSorted(chain)))
            chain.Sort(Compare);
        return [.. chains.Values.SelectMany(chain => chain)];
    }

    private static bool IsSorted(List<Entry> chain)
    {
        for (var i = 1; i < chain.Count; i++)
        {
            if (Compare(chain[i - 1], chain[i]) > 0)
                return false;
        }

        return true;
    }

    private static int Compare(Entry left, Entry right) =>
        left.Sequence != right.Sequence ? left.Sequence.CompareTo(right.Sequence) : left.Id.CompareTo(right.Id);
}
