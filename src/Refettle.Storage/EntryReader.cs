using System.Text;
using Microsoft.Data.Sqlite;
using Refettle.Logbook;
using static SQLitePCL.raw;

namespace Refettle.Storage;

/// <summary>Streams entries in one pass. Written against SQLite's own calls: this is the path that decides how long a big logbook
/// takes to open, and the driver's checks of every cell cost as much again.</summary>
internal sealed class EntryReader : IDisposable
{
    private const string Columns =
        "SELECT Position, Id, Car, Device, Sequence, After, Salt, Previous, At, Kind, Version, Payload FROM Entries ";
    private const string OfCar = Columns + "WHERE Car = ?1 AND Position > ?2 ORDER BY Position";
    private const string OfNames = Columns + "WHERE Kind IN ('car-opened', 'struck') ORDER BY Position";

    private readonly SqliteConnection _connection;
    private readonly SQLitePCL.sqlite3_stmt _statement;
    private readonly string[] _lastWord = ["", "", "", "", "", "", "", "", "", "", "", ""];

    private EntryReader(SqliteConnection connection, string query)
    {
        _connection = connection;
        Check(sqlite3_prepare_v2(connection.Handle, query, out _statement));
    }

    private EntryReader(SqliteConnection connection, string car, long after)
        : this(connection, OfCar)
    {
        Check(sqlite3_bind_text(_statement, 1, car));
        Check(sqlite3_bind_int64(_statement, 2, after));
    }

    public static EntryReader Open(Connections connections, string car, long after) =>
        Open(connections, connection => new(connection, car, after));

    /// <summary>The entries of all cars that decide what each is called.</summary>
    public static EntryReader OpenNames(Connections connections) => Open(connections, connection => new(connection, OfNames));

    private static EntryReader Open(Connections connections, Func<SqliteConnection, EntryReader> read)
    {
        var connection = connections.Open();
        try
        {
            return read(connection);
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }

    /// <summary>The next entry; null after the last.</summary>
    public KeptEntry? Read()
    {
        var step = sqlite3_step(_statement);
        if (step == SQLITE_DONE)
            return null;
        if (step != SQLITE_ROW)
            Check(step);
        return new(sqlite3_column_int64(_statement, 0), Row());
    }

    public void Dispose()
    {
        _statement.Dispose();
        _connection.Dispose();
    }

    private Entry Row() => new()
    {
        Id = Cell.Identifier(Bytes(1)),
        Car = Word(2),
        Device = Word(3),
        Sequence = sqlite3_column_int64(_statement, 4),
        After = Cell.Identifiers(Bytes(5)),
        Salt = Encoding.UTF8.GetString(Bytes(6)),
        Previous = Encoding.UTF8.GetString(Bytes(7)),
        At = Cell.Moment(sqlite3_column_int64(_statement, 8)),
        Kind = Word(9),
        Version = sqlite3_column_int(_statement, 10),
        Payload = Encoding.UTF8.GetString(Bytes(11)),
    };

    private ReadOnlySpan<byte> Bytes(int column) => sqlite3_column_blob(_statement, column);

    /// <summary>The string of the row before when it says the same word again.</summary>
    private string Word(int column)
    {
        var bytes = Bytes(column);
        if (!Ascii.Equals(bytes, _lastWord[column]))
            _lastWord[column] = Encoding.UTF8.GetString(bytes);
        return _lastWord[column];
    }

    private void Check(int code)
    {
        if (code is not SQLITE_OK)
            SqliteException.ThrowExceptionForRC(code, _connection.Handle);
    }
}
