using System.Net.Sockets;
using Refettle.Logbook;
using Refettle.Server;

namespace Refettle.Cli;

/// <summary>Serves the pages until Ctrl-C.</summary>
internal static class Serving
{
    public const int UsualPort = 5188;

    /// <param name="started">Told the address once the pages can be opened.</param>
    public static Reply Run(Desk desk, ILogbook logbook, int port, Action<string> started) => port is < 0 or > ushort.MaxValue
        ? Reply.Bad([new($"port {port}", "there is no such port", $"Give 1 to {ushort.MaxValue}, or 0 for any that is free.")])
        : Reply.To(desk.SoundKits(), shelf => RunAsync(desk, new() { Logbook = logbook, Planner = desk.Planner, Kits = shelf.Kits, Start = shelf.Start, Port = port }, started).GetAwaiter().GetResult());

    private static async Task<Reply> RunAsync(Desk desk, HostOptions options, Action<string> started)
    {
        await using var server = RefettleHost.Build(options);
        try
        {
            await server.StartAsync(desk.Around.Interrupt);
        }
        catch (Exception trouble) when (trouble is IOException or SocketException)
        {
            return Reply.Bad([new($"port {options.Port}", "something else listens there already", "Give another with --port, or 0 for any that is free.")]);
        }

        var address = server.Urls.First();
        started(address);
        await Task.Delay(Timeout.Infinite, desk.Around.Interrupt).ContinueWith(_ => { }, TaskScheduler.Default);
        await server.StopAsync();
        return Reply.Said("", new { address });
    }
}
