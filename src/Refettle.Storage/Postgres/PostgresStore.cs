using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using Refettle.Logbook;
using Refettle.Storage.Pairing;
using Refettle.Storage.Tables;

namespace Refettle.Storage.Postgres;

/// <summary>Logbooks on a PostgreSQL server, for several bays that share them.</summary>
/// <remarks>Writers take turns by a lock of the database: whoever reads a position has seen all before it, and the chain of this store has
/// no two entries with one number.</remarks>
public sealed class PostgresStore : IGarageStore
{
    /// <summary>"Rftl": the key of the lock that writers hold until they are durable.</summary>
    private const long WritersTurn = 0x5266746C;

    private readonly DbContextOptions<PostgresContext> _options;
    private readonly LogWriter _writer;
    private readonly Transactions _tables;

    private PostgresStore(
        string place, DbContextOptions<PostgresContext> options, string device, TimeProvider clock, RandomNumberGenerator random)
    {
        (Place, _options, _writer) = (place, options, new(device, clock, random));
        _tables = Tables();
        Devices = new(_tables, clock, random);
        Pictures = new PostgresPictures(Tables());
        Photos = new($"{Files}.photos", Pictures);
    }

    public string Place { get; }

    /// <summary>Below the folder in which the program runs: each bay has its own.</summary>
    public string Files => Path.Combine("data", Identifier.From(Place));

    public string Device => _writer.Device;

    public PairedDevices Devices { get; }

    /// <summary>What all bays share.</summary>
    public ISharedPictures Pictures { get; }

    /// <summary>In the database; this machine keeps those it was asked for.</summary>
    public PhotoStore Photos { get; }

    /// <summary>Whether what is given as a store names a database server and not a file.</summary>
    public static bool IsConnection(string store) => store.Contains("Host=", StringComparison.OrdinalIgnoreCase);

    /// <summary>Opens the logbooks in a database; it and its tables are made when they are missing and the user may.</summary>
    /// <param name="connection">As Npgsql reads it: <c>Host=…;Database=…;Username=…</c>.</param>
    public static Result<PostgresStore> Open(string connection, TimeProvider clock, RandomNumberGenerator random)
    {
        var place = "the database server";
        try
        {
            var parsed = new NpgsqlConnectionStringBuilder(connection);
            place = $"database {parsed.Database ?? parsed.Username} on {parsed.Host}:{parsed.Port}";
            var options = PostgresContext.Options(connection);
            using var context = new PostgresContext(options);
            if (context.Database.CanConnect() && context.Database.GetAppliedMigrations().Except(context.Database.GetMigrations()).Any())
                return Result<PostgresStore>.Bad(
                    new Fault(place, "it was written by a newer version of the program", "Update this one; nothing was changed."));
            context.Database.Migrate();
            return Result<PostgresStore>.Good(new(place, options, Named(context, random), clock, random));
        }
        catch (ArgumentException wrong)
        {
            return Result<PostgresStore>.Bad(new Fault("--store",
                $"the connection cannot be read ({wrong.Message.ReplaceLineEndings(" ").TrimEnd('.')})",
                "Give Host=…;Database=…;Username=…;Password=…"));
        }
        catch (Exception problem) when (ServerFaults.Of(place, problem) is { } fault)
        {
            return Result<PostgresStore>.Bad(fault);
        }
    }

    public ValueList<ShelfCar> Cars() => _tables.Ask(context =>
    {
        var last = context.Entries.GroupBy(row => row.Car).Select(car => new { Id = car.Key, Position = car.Max(row => row.Position) })
            .ToList();
        var names = context.Entries.AsNoTracking().Where(row => row.Kind == "car-opened" || row.Kind == "struck")
            .OrderBy(row => row.Position)
            .AsEnumerable().Select(row => row.ToEntry()).ToLookup(entry => entry.Car);
        return last.Select(car => new ShelfCar(car.Id, CarHistory.Of(car.Id, names[car.Id]).Car.Name, car.Position))
            .OrderBy(car => car.Id, StringComparer.Ordinal).ToValueList();
    });

    public IEnumerable<KeptEntry> Read(string car, long after = 0) => _tables.Ask(context => context.Entries.AsNoTracking()
        .Where(row => row.Car == car && row.Position > after).OrderBy(row => row.Position)
        .AsEnumerable().Select(row => new KeptEntry(row.Position, row.ToEntry())).ToList());

    public Result<ValueList<Entry>> Write(string car, params IEnumerable<Happening> happenings)
    {
        var told = happenings.ToList();
        return Writing(context => Departures.Add(context, _writer, car, told));
    }

    public Result<int> Append(IEnumerable<Entry> entries) => Arrivals.Take(entries, Writing);

    public void Dispose()
    {
        using var context = new PostgresContext(_options);
        NpgsqlConnection.ClearPool((NpgsqlConnection)context.Database.GetDbConnection());
    }

    /// <summary>What is written through one of these takes turns; a picture takes long and has its own.</summary>
    private Transactions Tables() => new(() => new PostgresContext(_options), problem => ServerFaults.Of(Place, problem));

    private Result<T> Writing<T>(Func<LogbookContext, Result<T>> write) => _tables.Run(context =>
    {
        context.Database.ExecuteSql($"SELECT pg_advisory_xact_lock({WritersTurn})");
        return write(context);
    });

    private static string Named(PostgresContext context, RandomNumberGenerator random)
    {
        using var transaction = context.Database.BeginTransaction();
        context.Database.ExecuteSql($"SELECT pg_advisory_xact_lock({WritersTurn})");
        if (context.Set<IdentityRow>().AsNoTracking().SingleOrDefault() is not { } known)
        {
            known = new() { Key = 1, Device = Identity.New(random) };
            context.Add(known);
            context.SaveChanges();
        }

        transaction.Commit();
        return known.Device;
    }
}
