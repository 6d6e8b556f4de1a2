namespace Refettle.Logbook;

/// <summary>A car as its log tells it: the entries in their order with what each counts for, and the car as it stands.</summary>
/// <param name="Faults">What is wrong with the log itself: forked chains, references in a circle, two versions of one entry;
/// and references of the description to things that it does not have.</param>
public sealed record CarHistory(Car Car, ValueList<HistoryLine> Lines, ValueList<Fault> Faults)
{
    /// <summary>The fold. It depends on the set of entries alone: their order, and repeats among them, mean nothing.</summary>
    /// <param name="car">The car's identifier; entries about other cars are passed over.</param>
    /// <param name="decode">Reads an entry; by default <see cref="Happenings.Decode"/>. Who folds again
    /// and again remembers what was read.</param>
    public static CarHistory Of(string car, IEnumerable<Entry> entries, Func<Entry, Result<Happening?>>? decode = null)
    {
        var ordered = EntryOrder.Of(entries.Where(entry => entry.Car == car).ToList());
        var lines = Strikes.Judge(ordered.Entries, decode ?? Happenings.Decode);
        var builder = new CarBuilder(car);
        for (var i = 0; i < lines.Length; i++)
        {
            if (lines[i] is { Standing: Standing.InForce, Happening: { } happening })
                lines[i] = Applied(lines[i], builder.Apply(happening));
        }

        var (built, faults) = builder.Build();
        return new(built, ValueList.Create<HistoryLine>(lines), [.. ordered.Faults, .. faults]);
    }

    /// <summary>The line of an entry; null when it is not in this log.</summary>
    public HistoryLine? Line(Guid id) => Lines.FirstOrDefault(line => line.Entry.Id == id);

    private static HistoryLine Applied(HistoryLine line, Applied outcome)
    {
        if (outcome.Refusal is not null)
            return line with { Standing = Standing.NotApplied, Reason = outcome.Refusal };
        return outcome == Logbook.Applied.Fully
            ? line
            : line with { AlsoRemoved = outcome.AlsoRemoved, ChangesNothing = outcome.ChangedNothing };
    }
}

/// <summary>What became of a happening: a reason why it does not fit, or what else it removed.</summary>
internal readonly record struct Applied(string? Refusal, ValueList<string> AlsoRemoved)
{
    /// <summary>It was so already.</summary>
    public bool ChangedNothing { get; private init; }

    public static Applied Fully { get; } = new(null, []);

    public static Applied Nothing { get; } = new(null, []) { ChangedNothing = true };

    public static Applied Not(string why) => new(why, []);
}
