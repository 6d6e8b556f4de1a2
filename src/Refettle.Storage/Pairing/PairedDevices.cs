using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using Refettle.Logbook;
using Refettle.Storage.Tables;

namespace Refettle.Storage.Pairing;

/// <summary>Who may use this garage over the network: codes that pair one device once, and the tokens of paired
/// devices. Of both only hashes are kept.</summary>
public sealed class PairedDevices
{
    /// <summary>How long a code may be used.</summary>
    public static readonly TimeSpan CodeLasts = TimeSpan.FromMinutes(10);

    private const int LongestName = 60;
    private const int IdBytes = 3;
    private readonly Transactions _tables;
    private readonly TimeProvider _clock;
    private readonly RandomNumberGenerator _random;

    internal PairedDevices(Transactions tables, TimeProvider clock, RandomNumberGenerator random) =>
        (_tables, _clock, _random) = (tables, clock, random);

    /// <summary>A code that pairs one device within <see cref="CodeLasts"/>.</summary>
    public Result<string> NewCode() => _tables.Run(context =>
    {
        var now = Now;
        context.Codes.Where(code => code.Until <= now).ExecuteDelete();
        var shown = PairingCode.New(_random);
        context.Codes.Add(new() { CodeHash = Hashed(shown), Until = now + (long)CodeLasts.TotalMilliseconds });
        return Result<string>.Good(shown);
    });

    /// <summary>Pairs a device. The code is used up.</summary>
    /// <param name="code">As typed or scanned.</param>
    /// <param name="name">What its owner calls it; cut at 60 letters.</param>
    public Result<NewDevice> Pair(string code, string name) => _tables.Run(context =>
    {
        var (hash, now) = (Hashed(code), Now);
        if (context.Codes.Where(row => row.CodeHash == hash && row.Until > now).ExecuteDelete() == 0)
            return Result<NewDevice>.Bad(new Fault("the code", "it is not one that is waiting to be used",
                $"Each works once, for {CodeLasts.TotalMinutes:0} minutes. Ask for a new one: refettle pair."));
        var token = PairingCode.NewToken(_random);
        var row = new DeviceRow
        { Id = RandomText.Hex(_random, IdBytes), Name = Named(name), TokenHash = PairingCode.Hash(token), Since = now };
        context.Devices.Add(row);
        return Result<NewDevice>.Good(new(Of(row), token));
    });

    /// <summary>The device that has this token; null when none has, or not any more.</summary>
    /// <exception cref="LogbookException">The store refused.</exception>
    public PairedDevice? Find(string token)
    {
        var hash = PairingCode.Hash(token);
        return _tables.Ask(
            context => context.Devices.AsNoTracking().SingleOrDefault(row => row.TokenHash == hash) is { } found ? Of(found) : null);
    }

    /// <summary>All devices, the oldest first.</summary>
    /// <exception cref="LogbookException">The store refused.</exception>
    public ValueList<PairedDevice> All() =>
        _tables.Ask(context => context.Devices.AsNoTracking().OrderBy(row => row.Since).ThenBy(row => row.Id).AsEnumerable().Select(Of)
            .ToValueList());

    /// <summary>From now on this device is turned away. What it wrote stays.</summary>
    public Result<PairedDevice> Revoke(string id) => _tables.Run(context =>
    {
        if (context.Devices.Find(id) is not { } row)
            return Result<PairedDevice>.Bad(new Fault($"device {id}", "no device of this name is paired",
                NearNames.Ask(id, All().Select(device => device.Id), "refettle devices lists them.")));
        context.Devices.Remove(row);
        return Result<PairedDevice>.Good(Of(row));
    });

    /// <summary>Remembers whose entries these are. A device has a new name in entries once its pages' memory was cleared.</summary>
    /// <param name="writers">Names in the entries that it sent as its own.</param>
    public Result<int> Wrote(PairedDevice device, IEnumerable<string> writers) => _tables.Run(context =>
    {
        foreach (var writer in writers.Distinct(StringComparer.Ordinal))
        {
            if (context.Writers.Find(writer) is { } known)
                known.Name = device.Name;
            else
                context.Writers.Add(new() { Device = writer, Name = device.Name });
        }

        return Result<int>.Good(context.ChangeTracker.Entries<WriterRow>().Count(row => row.State != EntityState.Unchanged));
    });

    /// <summary>What the writers of entries are called, as far as they were paired when they sent them.</summary>
    /// <exception cref="LogbookException">The store refused.</exception>
    public DeviceNames Names() => new(_tables.Ask(context => context.Writers.AsNoTracking().OrderBy(row => row.Device).AsEnumerable()
        .Select(row => new NamedDevice(row.Device, row.Name)).ToValueList()));

    private long Now => _clock.GetUtcNow().ToUnixTimeMilliseconds();

    private static string Hashed(string code) => PairingCode.Hash(PairingCode.Plain(code));

    private static string Named(string name) =>
        name.Trim() is not { Length: > 0 } given ? "a device" : given.Length <= LongestName ? given : given[..LongestName];

    private static PairedDevice Of(DeviceRow row) => new(row.Id, row.Name, Cell.Moment(row.Since));
}
