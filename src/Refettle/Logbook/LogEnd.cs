namespace Refettle.Logbook;

/// <summary>Where a device's next entry about a car is attached.</summary>
/// <param name="Own">Its own newest entry about the car; null before its first.</param>
/// <param name="News">The newest entries of each other device that arrived since.</param>
public sealed record LogEnd(Entry? Own, ValueList<Guid> News)
{
    public static LogEnd Empty { get; } = new(null, []);

    /// <param name="inArrivalOrder">All entries about one car, in the order in which this device came to know them.</param>
    public static LogEnd Of(string device, IEnumerable<Entry> inArrivalOrder)
    {
        Entry? own = null;
        var news = new SortedDictionary<string, Entry>(StringComparer.Ordinal);
        foreach (var entry in inArrivalOrder)
        {
            if (entry.Device != device)
            {
                if (!news.TryGetValue(entry.Device, out var newest) || newest.Sequence < entry.Sequence)
                    news[entry.Device] = entry;
            }
            else if (own is null || own.Sequence < entry.Sequence)
            {
                own = entry;
                news.Clear();
            }
        }

        return new(own, news.Values.Select(entry => entry.Id).ToValueList());
    }
}
