namespace Refettle.Logbook;

/// <summary>Two clocks that cannot both be right.</summary>
/// <param name="Device">The device whose entry it is.</param>
/// <param name="By">They are apart by at least so much.</param>
/// <param name="Other">The device that wrote before it what bears a later time; null for the clock of whoever looks.</param>
public sealed record ClockDoubt(string Device, TimeSpan By, string? Other)
{
    private const string Mend =
        "Set the clock that is wrong. The order of entries does not depend on it; for what soaks, cures or waits go by your own watch.";

    /// <summary>One plain line.</summary>
    /// <param name="own">The device on which it is read.</param>
    /// <param name="names">What the others are called; null for their names in entries.</param>
    public Fault Says(string own, DeviceNames? names = null) =>
        new("clock", Found(own, device => device == own ? "this device" : (names ?? DeviceNames.None).Of(device)), Mend)
        { Severity = Severity.Note };

    private string Found(string own, Func<string, string> name) => (Device == own, Other) switch
    {
        (true, null) =>
            $"this device's clock stands {ClocksApart.Words(By)} before its own newest entry: it was ahead then, or is behind now",
        (_, null) => $"entries of {name(Device)} lie {ClocksApart.Words(By)} ahead of this device's clock",
        var (_, other) when other == Device => $"the clock of {name(Device)} was set back by {ClocksApart.Words(By)}",
        _ => $"{name(Device)} wrote at a time that lies {ClocksApart.Words(By)} before that of what it knew from {name(Other!)}: the clock of one of them is off",
    };
}

/// <summary>Finds by what clocks contradict each other. It changes nothing: <see cref="EntryOrder"/> looks at no clock.</summary>
public static class ClockDoubts
{
    /// <summary>All that a car's log shows.</summary>
    public static ValueList<ClockDoubt> Of(CarHistory history, DateTimeOffset now) =>
        [.. Ahead(history.Lines.Select(line => line.Entry), now), .. Backward(history.Lines.Select(line => line.Entry))];

    /// <summary>Devices with entries of a time that is still to come, each with how far.</summary>
    public static ValueList<ClockDoubt> Ahead(IEnumerable<Entry> entries, DateTimeOffset now) =>
        entries.Where(entry => entry.At > now + ClocksApart.Borne)
        .GroupBy(entry => entry.Device).Select(group => new ClockDoubt(group.Key, group.Max(entry => entry.At) - now, null))
        .OrderBy(doubt => doubt.Device, StringComparer.Ordinal).ToValueList();

    /// <summary>Entries whose time lies before that of an entry which their writer knew, the worst of each pair of devices.</summary>
    /// <param name="ordered">Entries in the order of <see cref="EntryOrder"/>.</param>
    public static ValueList<ClockDoubt> Backward(IEnumerable<Entry> ordered)
    {
        var (known, ends, worst) = (new Dictionary<Guid, (DateTimeOffset At, string Device)>(), new Dictionary<string, Guid>(),
            new Dictionary<(string, string), TimeSpan>());
        foreach (var entry in ordered)
        {
            var before = entry.After.Append(ends.GetValueOrDefault(entry.Device)).Select(id => known.GetValueOrDefault(id))
                .MaxBy(one => one.At);
            if (before.Device is not null && before.At - entry.At is var by && by > ClocksApart.Borne
                && by > worst.GetValueOrDefault((entry.Device, before.Device)))
                worst[(entry.Device, before.Device)] = by;
            known[entry.Id] = before.Device is not null && before.At > entry.At ? before : (entry.At, entry.Device);
            ends[entry.Device] = entry.Id;
        }

        return worst.Select(pair => new ClockDoubt(pair.Key.Item1, pair.Value, pair.Key.Item2))
            .OrderBy(doubt => doubt.Device, StringComparer.Ordinal).ThenBy(doubt => doubt.Other, StringComparer.Ordinal).ToValueList();
    }

    /// <summary>What a device says whose clock is not that of the garage's machine; null when they agree.</summary>
    /// <param name="ahead">This device's clock less the other one's.</param>
    public static Fault? OfThisDevice(TimeSpan? ahead) => ahead is not { } by || by.Duration() <= ClocksApart.Borne ? null
        : new("clock",
            $"this device's clock is {ClocksApart.Words(by.Duration())} {(by > TimeSpan.Zero ? "ahead of" : "behind")} that of the garage's machine", "Set the one that is wrong: soaks, cures and waits that are begun here are off by as much.")
        { Severity = Severity.Note };
}
