using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

namespace Refettle.Storage;

/// <summary>Brings a database file to the form that this version writes, in one transaction: a crash leaves it as it was or done.</summary>
internal static class Opening
{
    /// <summary>"Rftl", written into the file's header: what another program made is never touched.</summary>
    private const long ApplicationId = 0x5266746C;

    /// <returns>Why the file must be left alone; null when it is ready.</returns>
    public static Fault? Prepare(string path, Connections connections)
    {
        using var connection = connections.Open();
        if (Foreign(path, connection) is { } fault)
            return fault;
        using var context = connections.Context();
        var known = context.Database.GetMigrations().ToList();
        var applied = Applied(connection);
        if (applied.Except(known).Any())
            return new(path, "the logbook was written by a newer version of the program", "Update this one; the file was left as it is.");
        if (applied.Count < known.Count)
            Migrate(connection, context);
        return null;
    }

    private static Fault? Foreign(string path, SqliteConnection connection)
    {
        var application = connection.Ask<long>("PRAGMA application_id");
        if (application == ApplicationId || (application == 0 && connection.Ask<long>("SELECT count(*) FROM sqlite_master") == 0))
            return null;
        return new(path, "this is a database of another program", "Give another path; the file was left as it is.");
    }

    private static HashSet<string> Applied(SqliteConnection connection)
    {
        var applied = new HashSet<string>();
        if (connection.Ask<long>("SELECT count(*) FROM sqlite_master WHERE name = '__EFMigrationsHistory'") == 0)
            return applied;
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT MigrationId FROM __EFMigrationsHistory";
        using var reader = command.ExecuteReader();
        while (reader.Read())
            applied.Add(reader.GetString(0));
        return applied;
    }

    /// <summary>Runs the migrations' script ourselves: the library's own lock stays behind for ever when a process is killed.</summary>
    private static void Migrate(SqliteConnection connection, DbContext context)
    {
        if (connection.Ask<string>("PRAGMA journal_mode = WAL") != "wal")
            throw new IOException("The disk does not allow write-ahead logging; use a local disk.");
        using var transaction = connection.BeginTransaction(deferred: false);
        var from = Applied(connection).Max() ?? Migration.InitialDatabase;
        var script = context.GetService<IMigrator>().GenerateScript(from, null, MigrationsSqlGenerationOptions.NoTransactions);
        using var command = connection.CreateCommand();
        command.Transaction = transaction;
        command.CommandText = script + $"; PRAGMA application_id = {ApplicationId};";
        command.ExecuteNonQuery();
        transaction.Commit();
    }
}
