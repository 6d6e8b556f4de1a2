using System.Net.Sockets;
using Refettle.Server;
using Refettle.Server.Pairing;
using Refettle.Storage;
using Refettle.Storage.Certificates;
using Refettle.Storage.Copies;

namespace Refettle.Cli;

/// <summary>For whom the pages are served.</summary>
internal enum Reach
{
    ThisMachine,

    /// <summary>Also for paired devices on the network.</summary>
    Network,

    /// <summary>The same, also encrypted, at the next port.</summary>
    NetworkEncrypted,
}

/// <summary>Serves the pages until Ctrl-C, and copies the logbook once a day meanwhile.</summary>
internal static class Serving
{
    public const int UsualPort = 5188;
    private static readonly TimeSpan LooksForANewDay = TimeSpan.FromMinutes(30);

    /// <param name="started">Told the address once the pages can be opened.</param>
    public static Reply Run(Desk desk, IGarageStore store, int port, Reach reach, Action<Uri> started) => port is < 0 or >= ushort.MaxValue
        ? Reply.Bad([new($"port {port}", "there is no such port", $"Give 1 to {ushort.MaxValue - 1}, or 0 for any that is free.")])
        : Reply.To(Own(desk, store, reach), own => Reply.To(desk.SoundKits(), shelf => RunAsync(desk, store, new()
        {
            Logbook = store,
            Planner = desk.Planner,
            Ladders = desk.Ladders() is { IsGood: true } ladders ? ladders.Value : new([]),
            Scheduler = desk.Around.Scheduler,
            Clock = desk.Around.Clock,
            Scoper = desk.Scoper,
            Kits = shelf.Kits,
            Start = shelf.Start,
            Photos = store.Photos,
            Names = store.Devices.Names,
            Port = port,
            Devices = reach == Reach.ThisMachine ? null : store.Devices,
            Certificate = own,
        }, started).GetAwaiter().GetResult()));

    private static Result<OwnCertificate?> Own(Desk desk, IGarageStore store, Reach reach)
    {
        if (reach != Reach.NetworkEncrypted)
            return Result<OwnCertificate?>.Good(null);
        var own = OwnAuthority.Of($"{store.Files}.tls", [.. Doorway.Addresses(), .. Doorway.Names()], desk.Around.Clock);
        return own.IsGood ? Result<OwnCertificate?>.Good(own.Value) : Result<OwnCertificate?>.Bad(own.Faults);
    }

    private static async Task<Reply> RunAsync(Desk desk, IGarageStore store, HostOptions options, Action<Uri> started)
    {
        await using var server = RefettleHost.Build(options);
        try
        {
            await server.StartAsync(desk.Around.Interrupt);
        }
        catch (Exception trouble) when (trouble is IOException or SocketException)
        {
            return Reply.Bad([new($"port {options.Port}", "something else listens there already",
                "Give another with --port, or 0 for any that is free.")]);
        }

        var address = new Uri(server.Urls.First().Replace("0.0.0.0", "127.0.0.1", StringComparison.Ordinal));
        started(address);
        if (store.Photos.Share() is { IsGood: false } unshared)
            await desk.Around.Error.WriteLineAsync($"Photos of this machine could not be given to the others: {unshared.Faults[0]}");
        await CopyDailyAsync(desk, store);
        await server.StopAsync();
        return Reply.Said("", new { address });
    }

    /// <summary>Until Ctrl-C. A copy that cannot be made is told of once a day and stops nothing.</summary>
    private static async Task CopyDailyAsync(Desk desk, IGarageStore store)
    {
        var told = default(DateOnly);
        while (!desk.Around.Interrupt.IsCancellationRequested)
        {
            var today = DateOnly.FromDateTime(desk.Around.Clock.GetLocalNow().DateTime);
            if (store is LogbookStore file && DailyCopies.Make(file, desk.Around.Clock) is { IsGood: false } failed && told != today)
            {
                told = today;
                await desk.Around.Error.WriteLineAsync($"Today's copy of the logbook could not be made: {failed.Faults[0]}");
            }

            await Task.Delay(LooksForANewDay, desk.Around.Clock, desk.Around.Interrupt).ContinueWith(_ => { }, TaskScheduler.Default);
        }
    }
}
