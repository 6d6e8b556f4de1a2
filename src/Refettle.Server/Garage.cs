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
    public CarHistory? History(string id)
    {
        if (LastPosition(id) is not { } position)
            return null;
        if (_folded.TryGetValue(id, out var known) && known.Position == position)
            return known.History;
        var history = CarHistory.Of(id, logbook.Read(id).Select(kept => kept.Entry));
        _folded[id] = (position, history);
        return history;
    }

    /// <summary>All cars but one.</summary>
    public IEnumerable<CarHistory> Others(string id) => logbook.Cars().Where(car => car.Id != id).Select(car => History(car.Id)).OfType<CarHistory>();

    /// <summary>All cars with their logs.</summary>
    public IReadOnlyCollection<CarHistory> Histories => [.. logbook.Cars().Select(car => History(car.Id)!)];

    /// <summary>Where the newest entry about a car stands; null when there is none.</summary>
    public long? LastPosition(string id) => logbook.Cars().FirstOrDefault(car => car.Id == id)?.LastPosition;
}
