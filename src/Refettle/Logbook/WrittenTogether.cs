namespace Refettle.Logbook;

/// <summary>Entries that one action wrote: a line that says two things, a kit with its numbers.</summary>
public static class WrittenTogether
{
    /// <summary>The entries next to one in its device's chain that carry the same time to the millisecond, itself among
    /// them, in the order of the chain. A writer gives one time to all that it writes at once; two
    /// actions by hand never share one.</summary>
    /// <returns>Empty when the log does not have the entry.</returns>
    public static ValueList<HistoryLine> With(CarHistory history, Guid entry)
    {
        if (history.Line(entry) is not { } line)
            return [];
        var chain = history.Lines.Where(one => one.Entry.Device == line.Entry.Device).OrderBy(one => one.Entry.Sequence).ToList();
        var place = chain.FindIndex(one => one.Entry.Id == entry);
        var (first, last) = (place, place);
        while (first > 0 && chain[first - 1].Entry.At == line.Entry.At)
            first--;
        while (last + 1 < chain.Count && chain[last + 1].Entry.At == line.Entry.At)
            last++;
        return chain[first..(last + 1)].ToValueList();
    }
}
