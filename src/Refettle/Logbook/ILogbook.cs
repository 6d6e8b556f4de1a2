namespace Refettle.Logbook;

/// <summary>A logbook that is kept: entries about any number of cars. What it has acknowledged stays,
/// whatever happens to the machine.</summary>
/// <remarks>Safe for use from several threads, and for several processes at once.</remarks>
public interface ILogbook : IDisposable
{
    /// <summary>This machine's name in the entries that it writes here.</summary>
    string Device { get; }

    /// <summary>The cars that it has entries about, in the order of their identifiers.</summary>
    ValueList<ShelfCar> Cars();

    /// <summary>The entries about a car in the order in which they arrived here, each with its position.</summary>
    /// <param name="after">Only what arrived after this position; 0 for all.</param>
    IEnumerable<KeptEntry> Read(string car, long after = 0);

    /// <summary>Writes what happened as this machine's next entries about a car: all of them, or
    /// none. Good once they are durable.</summary>
    /// <remarks>Whether they fit the car is for <see cref="HappeningCheck"/> to say before.</remarks>
    Result<ValueList<Entry>> Write(string car, params IEnumerable<Happening> happenings);

    /// <summary>Takes in entries that other devices wrote, in any order: all of them, or none. Good once they are durable.
    /// An entry that is here already is passed over; one that differs from what is here under its identifier is a fault.</summary>
    /// <returns>How many were new.</returns>
    Result<int> Append(IEnumerable<Entry> entries);
}

/// <summary>An entry and its position in the order of arrival at this logbook, from 1, not without gaps.</summary>
public readonly record struct KeptEntry(long Position, Entry Entry);

/// <summary>A car that a logbook has entries about.</summary>
/// <param name="LastPosition">Position of the entry about it that arrived last.</param>
public sealed record ShelfCar(string Id, string Name, long LastPosition);
