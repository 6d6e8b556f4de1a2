using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

namespace Refettle.Storage;

/// <summary>Brings a database file to the form that this version writes, in one transaction: a crash leaves it as it was or done.</summary>
internal static class Opening
{
    /// <summary>How many migrations there are; the file carries the number, so that opening one that is up to date is quick.</summary>
    public const long Schema = 3;

    /// <summary>"Rftl", written into the file's header: what another program made is never touched.</summary>
    private const long ApplicationId = 0x5266746C;

    /// <returns>Why the file must be left alone; null when it is ready.</returns>
    public static Fault? Prepare(string path, Connections connections)
    {
        using var connection = connections.Open();
        if (Refused(path, connection) is { } fault)
            return fault;
        if (connection.Ask<string>("PRAGMA journal_mode = WAL") != "wal")
            return new(path, "the disk does not allow write-ahead logging", "Keep the logbook on a local disk.");
        var schema = connection.Ask<long>("PRAGMA user_version");
        if (schema is > 0 and < Schema)
            Backup.MakeBeforeChange(path, schema);
        if (schema < Schema)
            Migrate(connection, connections);
        return null;
    }

    /// <summary>Looks at a file without changing it.</summary>
    /// <returns>Why it is no logbook that this version can read; null when it is one.</returns>
    public static Fault? Examine(string path)
    {
        using var connection = new SqliteConnection($"Data Source={path};Mode=ReadOnly;Pooling=False");
        connection.Open();
        if (connection.Ask<long>("PRAGMA application_id") == 0)
            return new(path, "this is not a logbook", "Check the path.");
        return Refused(path, connection);
    }

    private static Fault? Refused(string path, SqliteConnection connection)
    {
        if (IsForeign(connection))
            return new(path, "this is a database of another program", "Give another path; the file was left as it is.");
        return connection.Ask<long>("PRAGMA user_version") > Schema
            ? new(path, "the logbook was written by a newer version of the program", "Update this one; the file was left as it is.")
            : null;
    }

    private static bool IsForeign(SqliteConnection connection) => connection.Ask<long>("PRAGMA application_id") switch
    {
        ApplicationId => false,
        0 => connection.Ask<long>("SELECT count(*) FROM sqlite_master") > 0,
        _ => true,
    };

    /// <summary>Runs the migrations' script ourselves: the library's own lock stays behind for ever when a process is killed.</summary>
    private static void Migrate(SqliteConnection connection, Connections connections)
    {
        using var transaction = connection.BeginTransaction(deferred: false);
        var schema = connection.Ask<long>("PRAGMA user_version");
        if (schema >= Schema)
            return;
        connection.Run(Script(connections, (int)schema));
        connection.Run($"PRAGMA application_id = {ApplicationId}; PRAGMA user_version = {Schema}");
        transaction.Commit();
    }

    private static string Script(Connections connections, int applied)
    {
        using var context = connections.Context();
        var from = applied == 0 ? Migration.InitialDatabase : context.Database.GetMigrations().ElementAt(applied - 1);
        return context.GetService<IMigrator>().GenerateScript(from, null, MigrationsSqlGenerationOptions.NoTransactions);
    }
}
