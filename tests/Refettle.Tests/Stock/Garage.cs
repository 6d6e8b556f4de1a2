using Refettle.Logbook;
using Refettle.Stock;
using Refettle.Tests.Logbook;

namespace Refettle.Tests.Stock;

/// <summary>A device that writes into the logs of two cars.</summary>
internal sealed class Garage(string name, int seed = 0)
{
    public const string Estate = "estate";

    public const string Saloon = "saloon";

    private readonly LogWriter _writer =
        new(name, new FixedClock(new(2026, 3, 1, 9, 0, 0, TimeSpan.Zero)), new SeededBytes($"{name}/{seed}"));

    public List<Entry> Known { get; } = [];

    public static DateOnly Day(int day) => new DateOnly(2026, 3, 1).AddDays(day);

    public Guid Write(string car, Happening happening)
    {
        var entry = _writer.Next(car, LogEnd.Of(name, Known.Where(known => known.Car == car).ToList()), happening);
        Known.Add(entry);
        return entry.Id;
    }

    /// <summary>Both cars with the parts and joints of <see cref="SmallCar"/>.</summary>
    public Garage Opened()
    {
        foreach (var happening in new[] { Estate, Saloon }.SelectMany(car => SmallCar.Opening.Select(happening => (car, happening))))
            Write(happening.car, happening.happening);
        return this;
    }

    /// <summary>Writes what a piece of work at the shelf gave; it must be good.</summary>
    public void Do(string car, Result<ValueList<Happening>> work)
    {
        Assert.True(work.IsGood, string.Join("; ", work.Faults));
        foreach (var happening in work.Value)
            Write(car, happening);
    }

    public void Learn(IEnumerable<Entry> entries)
    {
        var here = Known.Select(entry => entry.Id).ToHashSet();
        Known.AddRange(entries.Where(entry => here.Add(entry.Id)));
    }

    public Shelf Shelf() => ShelfOf(Known);

    public static CarHistory[] Histories(IReadOnlyCollection<Entry> entries) =>
        [CarHistory.Of(Estate, entries), CarHistory.Of(Saloon, entries)];

    public static Shelf ShelfOf(IReadOnlyCollection<Entry> entries) => ShelfFold.Of(Histories(entries));
}
