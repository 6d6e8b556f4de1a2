using System.Security.Cryptography;
using Microsoft.Data.Sqlite;

namespace Refettle.Storage;

/// <summary>This machine's name in a logbook.</summary>
internal static class Identity
{
    private const int RandomBytes = 8;

    /// <summary>The name that the logbook has for this machine; a new one at first.</summary>
    public static string Of(Connections connections, RandomNumberGenerator random)
    {
        using var connection = connections.Open();
        if (Stored(connection) is { } known)
            return known;
        Choose(connection, random);
        return Stored(connection)!;
    }

    /// <summary>Takes a new name, unless another process was quicker.</summary>
    public static void Choose(SqliteConnection connection, RandomNumberGenerator random)
    {
        using var add = connection.CreateCommand();
        add.CommandText = "INSERT OR IGNORE INTO Identity (\"Key\", Device) VALUES (1, $device)";
        add.Parameters.AddWithValue("$device", New(random));
        add.ExecuteNonQuery();
    }

    /// <summary>A name that no other machine has.</summary>
    public static string New(RandomNumberGenerator random) => "d-" + RandomText.Hex(random, RandomBytes);

    private static string? Stored(SqliteConnection connection) => connection.Ask<string>("SELECT Device FROM Identity WHERE \"Key\" = 1");
}
