using System.Security.Cryptography;
using Refettle.Logbook;

namespace Refettle.Server.Tests;

/// <summary>A logbook for tests that is gone when the test ends.</summary>
internal sealed class MemoryLogbook(TimeProvider clock) : ILogbook
{
    private readonly Lock _lock = new();
    private readonly List<Entry> _entries = [];

    public string Device => "test-bench";

    public ValueList<ShelfCar> Cars()
    {
        lock (_lock)
            return _entries.Select((entry, index) => (entry, index)).GroupBy(pair => pair.entry.Car)
                .Select(car => new ShelfCar(car.Key, CarHistory.Of(car.Key, car.Select(pair => pair.entry)).Car.Name, car.Max(pair => pair.index) + 1))
                .OrderBy(car => car.Id, StringComparer.Ordinal).ToValueList();
    }

    public IEnumerable<KeptEntry> Read(string car, long after = 0)
    {
        lock (_lock)
            return [.. _entries.Select((entry, index) => new KeptEntry(index + 1, entry)).Where(kept => kept.Entry.Car == car && kept.Position > after)];
    }

    public Result<ValueList<Entry>> Write(string car, params IEnumerable<Happening> happenings)
    {
        lock (_lock)
        {
            using var random = RandomNumberGenerator.Create();
            var end = LogEnd.Of(Device, _entries.Where(entry => entry.Car == car));
            var made = new LogWriter(Device, clock, random).Next(car, end, happenings);
            _entries.AddRange(made);
            return Result<ValueList<Entry>>.Good(made);
        }
    }

    public Result<int> Append(IEnumerable<Entry> entries)
    {
        lock (_lock)
        {
            var known = _entries.Select(entry => entry.Id).ToHashSet();
            var before = _entries.Count;
            _entries.AddRange(entries.Where(entry => known.Add(entry.Id)));
            return Result<int>.Good(_entries.Count - before);
        }
    }

    public void Dispose() => GC.SuppressFinalize(this);
}
