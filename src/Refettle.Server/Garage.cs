using System.Collections.Concurrent;
using Refettle.Logbook;

namespace Refettle.Server;

/// <summary>The cars as they stand, folded anew when their logbook has grown.</summary>
internal sealed class Garage(ILogbook logbook)
{
    private readonly ConcurrentDictionary<string, (long Position, CarHistory History)> _folded = new();

    /// <summary>The car; null when the logbook has no entry about it.</summary>
    public Car? Car(string id) => History(id)?.Car;

    /// <summary>The car with its log; null when the logbook has no entry about it.</summary>
    public CarHistory? History(string id) => LastPosition(id) is { } position ? Folded(id, position) : null;

    /// <summary>All cars but one.</summary>
    public IEnumerable<CarHistory> Others(string id) =>
        logbook.Cars().Where(car => car.Id != id).Select(car => Folded(car.Id, car.LastPosition));

    /// <summary>All cars with their logs.</summary>
    public IReadOnlyCollection<CarHistory> Histories() => [.. logbook.Cars().Select(car => Folded(car.Id, car.LastPosition))];

    /// <summary>Where the newest entry about a car stands; null when there is none.</summary>
    public long? LastPosition(string id) => logbook.Cars().FirstOrDefault(car => car.Id == id)?.LastPosition;

    private CarHistory Folded(string id, long position)
    {
        if (_folded.TryGetValue(id, out var known) && known.Position == position)
            return known.History;
        var history = CarHistory.Of(id, logbook.Read(id).Select(kept => kept.Entry));
        _folded[id] = (position, history);
        return history;
    }
}
