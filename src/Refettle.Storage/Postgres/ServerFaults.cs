using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace Refettle.Storage.Postgres;

/// <summary>Says in words what the database server refused.</summary>
internal static class ServerFaults
{
    private const string NothingLost = "nothing was written; what was acknowledged before is there.";

    /// <returns>The fault; null for what is a bug of ours.</returns>
    public static Fault? Of(string place, Exception problem) => Inner(problem) switch
    {
        PostgresException { SqlState: "28P01" or "28000" } =>
            new(place, "the database server does not accept this user or password", "Check both in --store."),
        PostgresException { SqlState: "3D000" } => new(place, "the database does not exist", "Make it first: createdb NAME."),
        PostgresException { SqlState: "42501" } =>
            new(place, "this user may not do that in the database", "Give the user the right to create and write tables."),
        PostgresException { SqlState: "53100" } => new(place, "the server's disk is full", $"Free some space there; {NothingLost}"),
        PostgresException refused =>
            new(place, $"the database server refused ({refused.SqlState}: {refused.MessageText})", $"See the server's log; {NothingLost}"),
        NpgsqlException or TimeoutException =>
            new(place, "the database server cannot be reached", $"Check that it runs and that host and port are right; {NothingLost}"),
        _ => null,
    };

    private static Exception Inner(Exception problem) => problem switch
    {
        PostgresException => problem,
        NpgsqlException { InnerException: PostgresException refused } => refused,
        DbUpdateException or InvalidOperationException when problem.InnerException is { } inner => Inner(inner),
        _ => problem,
    };
}
