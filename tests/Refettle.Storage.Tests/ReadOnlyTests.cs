using Refettle.Logbook;

namespace Refettle.Storage.Tests;

public sealed class ReadOnlyTests
{
    /// <summary>An SQLite connection that may only read (https://sqlite.org/pragma.html#pragma_query_only) refuses with SQLITE_READONLY, as
    /// on a disk that may only be read. It stays with the connection, which the logbook takes from the
    /// pool next. File permissions would not do: they do not hold for the administrator, as whom tests may run.</summary>
    [Fact]
    public void What_may_only_be_read_is_read_and_the_refusal_to_write_is_told()
    {
        using var shelf = new Shelf();
        using var logbook = shelf.Open();
        logbook.Write("heron", new Noted("before", null));
        using var connections = new Connections(shelf.File, create: true);
        using (var connection = connections.Open())
            connection.Run("PRAGMA query_only = ON");
        var refused = logbook.Write("heron", new Noted("refused", null));
        Assert.Contains("may be read but not written", Assert.Single(refused.Faults).Found, StringComparison.Ordinal);
        Assert.Single(logbook.Read("heron"));
    }
}
