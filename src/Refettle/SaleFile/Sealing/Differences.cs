namespace Refettle.SaleFile.Sealing;

/// <summary>Compares the entries of a record with its list of hashes, and each device's chain with itself.</summary>
internal static class Differences
{
    public static ValueList<EntryFinding> Of(FoundRecord found, string?[] hashes)
    {
        var listed = Listed(found.Manifest ?? []);
        var findings = new List<EntryFinding>();
        var strangers = new List<(int Line, GivenEntry? Entry)>();
        for (var i = 0; i < hashes.Length; i++)
        {
            var (line, entry) = found.Lines[i];
            if (entry is null || hashes[i] is null || !Take(listed, entry, hashes[i]!))
                strangers.Add((line, entry));
        }

        foreach (var (line, entry) in strangers)
            findings.Add(Judge(line, entry, listed));
        findings.AddRange(listed.Where(place => place.Value.Count > 0).SelectMany(place => place.Value
            .Select(_ => new EntryFinding(EntryChange.Removed, place.Key.Device, place.Key.Sequence, null,
                "it was in the file when it was made, and is gone"))));
        return findings.OrderBy(finding => finding.Device, StringComparer.Ordinal).ThenBy(finding => finding.Sequence).ToValueList();
    }

    /// <summary>Places where an entry was not written after the one before it in its chain: so already when the file
    /// was made, if its list is signed.</summary>
    public static ValueList<string> Chains(FoundRecord found, string?[] hashes)
    {
        var said = new List<string>();
        var chains = found.Lines.Select((line, i) => (line.Entry, Hash: hashes[i])).Where(line => line.Entry is not null)
            .GroupBy(line => line.Entry!.Device).OrderBy(chain => chain.Key, StringComparer.Ordinal);
        foreach (var chain in chains)
            said.AddRange(Breaks(chain.Key, [.. chain.OrderBy(link => link.Entry!.Sequence)]));
        return said.ToValueList();
    }

    private static IEnumerable<string> Breaks(string device, (GivenEntry? Entry, string? Hash)[] links)
    {
        var (number, before, here) = (0L, new HashSet<string> { "" }, new HashSet<string>());
        foreach (var (entry, hash) in links)
        {
            if (entry!.Sequence != number)
            {
                if (entry.Sequence > number + 1)
                    yield return $"device {device}: entries {number + 1} to {entry.Sequence - 1} are not there";
                before = entry.Sequence == number + 1 && number > 0 ? here : entry.Sequence == 1 ? [""] : [entry.Previous];
                (number, here) = (entry.Sequence, []);
            }
            else
            {
                yield return $"device {device}: there are two entries {number}";
            }

            here.Add(hash ?? "unreadable");
            if (!before.Contains(entry.Previous))
                yield return $"device {device}: entry {number} was not written after the entry {number - 1} that is here";
        }
    }

    private static Dictionary<(string Device, long Sequence), List<string>> Listed(ValueList<ManifestRun> manifest)
    {
        var listed = new Dictionary<(string, long), List<string>>();
        foreach (var run in manifest)
        {
            for (var i = 0; i < run.Hashes.Count; i++)
            {
                if (!listed.TryGetValue((run.Device, run.From + i), out var hashes))
                    listed[(run.Device, run.From + i)] = hashes = [];
                hashes.Add(run.Hashes[i]);
            }
        }

        return listed;
    }

    private static bool Take(Dictionary<(string Device, long Sequence), List<string>> listed, GivenEntry entry, string hash) =>
        listed.TryGetValue((entry.Device, entry.Sequence), out var hashes) && hashes.Remove(hash);

    /// <summary>An entry that is not listed took the place of one that is, or was put in.</summary>
    private static EntryFinding Judge(int line, GivenEntry? entry, Dictionary<(string Device, long Sequence), List<string>> listed)
    {
        if (entry is null)
            return new(EntryChange.Added, "", 0, line, "this line is not an entry that can be read");
        if (!listed.TryGetValue((entry.Device, entry.Sequence), out var hashes) || hashes.Count == 0)
            return new(EntryChange.Added, entry.Device, entry.Sequence, line, "it was not in the file when it was made");
        hashes.RemoveAt(0);
        return new(EntryChange.Changed, entry.Device, entry.Sequence, line, "it is not what was in the file when it was made");
    }
}
