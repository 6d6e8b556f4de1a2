namespace Refettle.Logbook;

/// <summary>Decides which entries are struck. A strike counts while no later strike that counts strikes it, so striking a strike
/// restores its target; a target with two strikes is restored when both are struck.</summary>
internal static class Strikes
{
    public static HistoryLine[] Judge(IReadOnlyList<Entry> ordered, Func<Entry, Result<Happening?>> decode)
    {
        var lines = new HistoryLine[ordered.Count];
        var placeOf = new Dictionary<Guid, int>(ordered.Count);
        for (var i = 0; i < lines.Length; i++)
        {
            lines[i] = Read(ordered[i], decode);
            placeOf[ordered[i].Id] = i;
        }

        var struck = new HashSet<int>();
        for (var i = lines.Length - 1; i >= 0; i--)
        {
            if (struck.Contains(i))
                lines[i] = lines[i] with { Standing = Standing.Struck, Reason = null };
            else if (lines[i].Happening is Struck strike)
                lines[i] = Strike(lines[i], strike, i, placeOf, struck);
        }

        return lines;
    }

    private static HistoryLine Strike(HistoryLine line, Struck strike, int place, Dictionary<Guid, int> placeOf, HashSet<int> struck)
    {
        if (!placeOf.TryGetValue(strike.Target, out var target))
            return line with { Standing = Standing.NotApplied, Reason = $"the entry that it strikes, {strike.Target}, is not here yet" };
        if (target >= place)
            return line with { Standing = Standing.NotApplied, Reason = "it strikes an entry that comes after it" };
        struck.Add(target);
        return line;
    }

    private static HistoryLine Read(Entry entry, Func<Entry, Result<Happening?>> decode)
    {
        var decoded = decode(entry);
        if (!decoded.IsGood)
            return new(entry, null, Standing.NotApplied, decoded.Faults[0].Found);
        return new(entry, decoded.Value, decoded.Value is null ? Standing.FromNewerVersion : Standing.InForce, null);
    }
}
