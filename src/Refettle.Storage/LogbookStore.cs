using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using Refettle.Logbook;
using Refettle.Storage.Pairing;
using Refettle.Storage.Tables;

namespace Refettle.Storage;

/// <summary>A logbook in a SQLite file.</summary>
public sealed class LogbookStore : IGarageStore
{
    private readonly Connections _connections;
    private readonly LogWriter _writer;
    private readonly Lock _writing = new();

    private LogbookStore(string path, Connections connections, LogWriter writer, PairedDevices devices) =>
        (Path, _connections, _writer, Devices) = (path, connections, writer, devices);

    /// <summary>Who else may use this garage over the network.</summary>
    public PairedDevices Devices { get; }

    public string Path { get; }

    public string Place => Path;

    public string Files => Path;

    public string Device => _writer.Device;

    /// <summary>Opens the logbook at a path.</summary>
    /// <param name="create">Makes a new one when there is none; its folder must exist.</param>
    /// <param name="random">Cryptographic outside of tests.</param>
    public static Result<LogbookStore> Open(string path, TimeProvider clock, RandomNumberGenerator random, bool create = true)
    {
        if (!create && !File.Exists(path))
            return Result<LogbookStore>.Bad(new Fault(path, "there is no logbook", "Check the path, or create one."));
        var connections = new Connections(path, create);
        try
        {
            if (Opening.Prepare(path, connections) is { } fault)
                return Closed(connections, fault);
            var device = Identity.Of(connections, random);
            return Result<LogbookStore>.Good(new(path, connections, new(device, clock, random), new(connections.Context, problem => DiskFaults.IsOfDisk(problem) ? DiskFaults.Of(path, problem) : null, clock, random)));
        }
        catch (Exception problem) when (DiskFaults.IsOfDisk(problem))
        {
            return Closed(connections, DiskFaults.Of(path, problem));
        }
    }

    public ValueList<ShelfCar> Cars() => Reading(() => Shelf.Of(_connections));

    public IEnumerable<KeptEntry> Read(string car, long after = 0)
    {
        using var rows = Reading(() => EntryReader.Open(_connections, car, after));
        while (Reading(rows.Read) is { } kept)
            yield return kept;
    }

    public Result<ValueList<Entry>> Write(string car, params IEnumerable<Happening> happenings)
    {
        var told = happenings.ToList();
        return Writing(context =>
        {
            var entries = _writer.Next(car, Ends.Of(context, car, Device), told);
            context.Entries.AddRange(entries.Select(EntryRow.Of));
            return Result<ValueList<Entry>>.Good(entries);
        });
    }

    public Result<int> Append(IEnumerable<Entry> entries)
    {
        var given = entries.ToList();
        var faults = given.SelectMany(EntryCheck.Of).ToValueList();
        return faults.Count > 0 ? Result<int>.Bad(faults) : Writing(context => Arrivals.Add(context, given));
    }

    /// <summary>What SQLite's own check of the whole file finds wrong; null when it is sound.</summary>
    public string? Damage() => Reading(() =>
    {
        using var connection = _connections.Open();
        return connection.Ask<string>("PRAGMA integrity_check(1)") is var found && found == "ok" ? null : found;
    });

    public void Dispose() => _connections.Dispose();

    /// <summary>Runs in one transaction that is durable once this returns a good result.</summary>
    private Result<T> Writing<T>(Func<LogbookContext, Result<T>> write)
    {
        lock (_writing)
        {
            try
            {
                using var context = _connections.Context();
                using var transaction = context.Database.BeginTransaction();
                var result = write(context);
                if (!result.IsGood)
                    return result;
                context.SaveChanges();
                transaction.Commit();
                return result;
            }
            catch (Exception problem) when (DiskFaults.IsOfDisk(problem))
            {
                return Result<T>.Bad(DiskFaults.Of(Path, problem));
            }
        }
    }

    private T Reading<T>(Func<T> read)
    {
        try
        {
            return read();
        }
        catch (Exception problem) when (DiskFaults.IsOfDisk(problem))
        {
            throw new LogbookException(DiskFaults.Of(Path, problem), problem);
        }
    }

    private static Result<LogbookStore> Closed(Connections connections, Fault fault)
    {
        connections.Dispose();
        return Result<LogbookStore>.Bad(fault);
    }
}
