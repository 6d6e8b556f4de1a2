using Refettle.Logbook;

namespace Refettle.Storage;

/// <summary>Lists the cars of a logbook. Written against the driver, like
/// <see cref="EntryReader"/>: every command begins with it.</summary>
internal static class CarList
{
    public static ValueList<ShelfCar> Of(Connections connections)
    {
        var names = Names(connections).ToLookup(entry => entry.Car);
        return Last(connections).Select(car => new ShelfCar(car.Id, CarHistory.Of(car.Id, names[car.Id]).Car.Name, car.Position))
            .OrderBy(car => car.Id, StringComparer.Ordinal).ToValueList();
    }

    private static List<(string Id, long Position)> Last(Connections connections)
    {
        using var connection = connections.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT Car, max(Position) FROM Entries GROUP BY Car";
        using var reader = command.ExecuteReader();
        var cars = new List<(string, long)>();
        while (reader.Read())
            cars.Add((reader.GetString(0), reader.GetInt64(1)));
        return cars;
    }

    private static List<Entry> Names(Connections connections)
    {
        using var rows = EntryReader.OpenNames(connections);
        var entries = new List<Entry>();
        while (rows.Read() is { } kept)
            entries.Add(kept.Entry);
        return entries;
    }
}
