using System.Security.Cryptography;
using Refettle.Logbook;
using Refettle.Storage.Pairing;

namespace Refettle.Storage;

/// <summary>A logbook in a SQLite file.</summary>
public sealed class LogbookStore : IGarageStore
{
    private readonly Connections _connections;
    private readonly LogWriter _writer;
    private readonly Transactions _tables;

    private LogbookStore(string path, Connections connections, string device, TimeProvider clock, RandomNumberGenerator random)
    {
        (Path, _connections, _writer) = (path, connections, new(device, clock, random));
        _tables = new(connections.Context, problem => DiskFaults.IsOfDisk(problem) ? DiskFaults.Of(path, problem) : null, new(path));
        Devices = new(_tables, clock, random);
        Photos = PhotoStore.Beside(path);
    }

    /// <summary>Who else may use this garage over the network.</summary>
    public PairedDevices Devices { get; }

    public PhotoStore Photos { get; }

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
        var (connections, patience) = (new Connections(path, create), new Patience(path));
        try
        {
            if (patience.While(() => Opening.Prepare(path, connections)) is { } fault)
                return Closed(connections, fault);
            var device = patience.While(() => Identity.Of(connections, random));
            return Result<LogbookStore>.Good(new(path, connections, device, clock, random));
        }
        catch (Exception problem) when (DiskFaults.IsOfDisk(problem))
        {
            return Closed(connections, DiskFaults.Of(path, problem));
        }
    }

    public ValueList<ShelfCar> Cars() => _tables.Read(() => CarList.Of(_connections));

    public IEnumerable<KeptEntry> Read(string car, long after = 0)
    {
        using var rows = _tables.Read(() => EntryReader.Open(_connections, car, after));
        while (_tables.Read(rows.Read) is { } kept)
            yield return kept;
    }

    public Result<ValueList<Entry>> Write(string car, params IEnumerable<Happening> happenings)
    {
        var told = happenings.ToList();
        return _tables.Run(context => Departures.Add(context, _writer, car, told));
    }

    public Result<int> Append(IEnumerable<Entry> entries) => Arrivals.Take(entries, _tables.Run);

    /// <summary>What SQLite's own check of the whole file finds wrong; null when it is sound.</summary>
    public string? Damage() => _tables.Read(() =>
    {
        using var connection = _connections.Open();
        return connection.Ask<string>("PRAGMA integrity_check(1)") is var found && found == "ok" ? null : found;
    });

    public void Dispose() => _connections.Dispose();

    private static Result<LogbookStore> Closed(Connections connections, Fault fault)
    {
        connections.Dispose();
        return Result<LogbookStore>.Bad(fault);
    }
}
