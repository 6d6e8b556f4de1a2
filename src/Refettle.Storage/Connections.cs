using System.Data.Common;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Refettle.Storage.Tables;

namespace Refettle.Storage;

/// <summary>Opens connections to one database file, each with what durability asks for.</summary>
internal sealed class Connections : DbConnectionInterceptor, IDisposable
{
    /// <summary>How long a writer waits for another process before it says that the file is locked.</summary>
    private const int WaitSeconds = 5;

    /// <summary>A commit returns when the disk has it; on macOS only F_FULLFSYNC asks the disk itself.</summary>
    private const string Durable =
        "PRAGMA synchronous = FULL; PRAGMA fullfsync = ON; PRAGMA checkpoint_fullfsync = ON; PRAGMA busy_timeout = 5000;";

    private readonly SqliteConnectionStringBuilder _string;
    private readonly Lazy<DbContextOptions<LogbookContext>> _options;

    public Connections(string path, bool create)
    {
        _string = new()
        {
            DataSource = path,
            Mode = create ? SqliteOpenMode.ReadWriteCreate : SqliteOpenMode.ReadWrite,
            DefaultTimeout = WaitSeconds,
        };
        _options = new(
            () => new DbContextOptionsBuilder<LogbookContext>().UseSqlite(_string.ConnectionString).AddInterceptors(this).Options);
    }

    public LogbookContext Context() => new(_options.Value);

    /// <summary>An open connection beside the contexts.</summary>
    public SqliteConnection Open()
    {
        var connection = new SqliteConnection(_string.ConnectionString);
        try
        {
            connection.Open();
            MakeDurable(connection);
            return connection;
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }

    public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData) => MakeDurable(connection);

    /// <summary>Lets go of the file.</summary>
    public void Dispose()
    {
        using var connection = new SqliteConnection(_string.ConnectionString);
        SqliteConnection.ClearPool(connection);
    }

    private static void MakeDurable(DbConnection connection)
    {
        using var command = connection.CreateCommand();
        command.CommandText = Durable;
        command.ExecuteNonQuery();
    }
}
