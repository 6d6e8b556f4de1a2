namespace Refettle.Storage.Tests;

/// <summary>What SQLite's documentation asks of a database that must not lose a commit when the power fails: write-ahead logging with
/// <c>synchronous = FULL</c> (https://sqlite.org/pragma.html#pragma_synchronous: FULL is 2).</summary>
public sealed class DurabilityTests
{
    [Fact]
    public void Every_connection_is_durable()
    {
        using var shelf = new Shelf();
        using var logbook = shelf.Open();
        using var connections = new Connections(shelf.File, create: false);
        for (var i = 0; i < 3; i++)
        {
            using var context = connections.Context();
            var connection = (Microsoft.Data.Sqlite.SqliteConnection)Microsoft.EntityFrameworkCore.RelationalDatabaseFacadeExtensions
                .GetDbConnection(context.Database);
            Microsoft.EntityFrameworkCore.RelationalDatabaseFacadeExtensions.OpenConnection(context.Database);
            AssertDurable(connection);
        }

        using var beside = connections.Open();
        AssertDurable(beside);
    }

    [Fact]
    public void A_plain_connection_would_not_show_the_same()
    {
        using var shelf = new Shelf();
        using var logbook = shelf.Open();
        using var plain = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={shelf.File};Pooling=False");
        plain.Open();
        Assert.Equal(0, plain.Ask<long>("PRAGMA fullfsync"));
    }

    private static void AssertDurable(Microsoft.Data.Sqlite.SqliteConnection connection)
    {
        Assert.Equal("wal", connection.Ask<string>("PRAGMA journal_mode"));
        Assert.Equal(2, connection.Ask<long>("PRAGMA synchronous"));
        Assert.Equal(1, connection.Ask<long>("PRAGMA fullfsync"));
    }
}
