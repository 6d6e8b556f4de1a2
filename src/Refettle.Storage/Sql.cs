using Microsoft.Data.Sqlite;

namespace Refettle.Storage;

/// <summary>Short commands on a connection.</summary>
internal static class Sql
{
    public static void Run(this SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    public static T? Ask<T>(this SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return command.ExecuteScalar() is { } value and not DBNull ? (T)value : default;
    }
}
