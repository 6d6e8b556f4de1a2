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
        var all = Distinct(entries, faults);
        Array.Sort(all, InChains);
        var depths = new DepthOrder(all, faults).Depths();
        Array.Sort(depths, all, Comparer<Depth>.Default);
        return new(all, faults.ToValueList());
    }

    private static int InChains(Entry left, Entry right)
    {
        var order = string.CompareOrdinal(left.Device, right.Device);
        order = order != 0 ? order : left.Sequence.CompareTo(right.Sequence);
        return order != 0 ? order : left.Id.CompareTo(right.Id);
    }

    private static Entry[] Distinct(IEnumerable<Entry> entries, List<Fault> faults)
    {
        var byId = new Dictionary<Guid, Entry>();
        foreach (var entry in entries)
        {
            if (byId.TryAdd(entry.Id, entry) || ReferenceEquals(byId[entry.Id], entry) || byId[entry.Id] == entry)
                continue;
            faults.Add(new($"entry {entry.Id}", "there are two of it that differ", "Compare the devices: one copy was changed."));
            if (string.CompareOrdinal(EntryHash.Of(entry), EntryHash.Of(byId[entry.Id])) < 0)
                byId[entry.Id] = entry;
        }

        return [.. byId.Values];
    }
}

/// <summary>A place in the order: depth, then place among the chains.</summary>
internal readonly record struct Depth(int Value, int Place) : IComparable<Depth>
{
    public int CompareTo(Depth other) => Value != other.Value ? Value.CompareTo(other.Value) : Place.CompareTo(other.Place);
}
