using Microsoft.Data.Sqlite;
using Refettle.Logbook;
using Refettle.Storage.Tables;

namespace Refettle.Storage;

/// <summary>Streams entries in one pass. Written against the driver: it is the path that decides how long a big logbook takes to open.</summary>
internal sealed class EntryReader : IDisposable
{
    private readonly SqliteConnection _connection;
    private readonly SqliteCommand _command;
    private readonly SqliteDataReader _reader;
    private readonly Dictionary<string, string> _words = [];

    private EntryReader(SqliteConnection connection, string car, long after)
    {
        _connection = connection;
        _command = connection.CreateCommand();
        _command.CommandText = """
            SELECT Position, Id, Car, Device, Sequence, After, Salt, Previous, At, Kind, Version, Payload
            FROM Entries WHERE Car = $car AND Position > $after ORDER BY Position
            """;
        _command.Parameters.AddWithValue("$car", car);
        _command.Parameters.AddWithValue("$after", after);
        _reader = _command.ExecuteReader();
    }

    public static EntryReader Open(Connections connections, string car, long after)
    {
        var connection = connections.Open();
        try
        {
            return new(connection, car, after);
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }

    public KeptEntry? Read() => _reader.Read() ? new(_reader.GetInt64(0), Row().ToEntry()) : null;

    public void Dispose()
    {
        _reader.Dispose();
        _command.Dispose();
        _connection.Dispose();
    }

    private EntryRow Row() => new()
    {
        Id = _reader.GetGuid(1),
        Car = Word(2),
        Device = Word(3),
        Sequence = _reader.GetInt64(4),
        After = _reader.GetString(5),
        Salt = _reader.GetString(6),
        Previous = _reader.GetString(7),
        At = _reader.GetInt64(8),
        Kind = Word(9),
        Version = _reader.GetInt32(10),
        Payload = _reader.GetString(11),
    };

    /// <summary>One string for all rows that say the same word.</summary>
    private string Word(int column)
    {
        var text = _reader.GetString(column);
        if (_words.TryGetValue(text, out var word))
            return word;
        _words[text] = text;
        return text;
    }
}
