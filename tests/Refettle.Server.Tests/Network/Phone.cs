using Microsoft.Extensions.Time.Testing;
using Refettle.Logbook;
using Refettle.Web.Garage;
using Refettle.Web.Tests.Garage;

namespace Refettle.Server.Tests.Network;

/// <summary>A device with a clock of its own, that is used, closed and opened again.</summary>
internal sealed class Phone : IDisposable
{
    private readonly string _car;
    private readonly string _name;
    private readonly MemoryKeeper _keeper = new();
    private readonly TimeProvider _clock;
    private readonly ServerApi _server;
    private readonly HttpClient _http;

    public Phone(string car, int number, Uri server, FaultyNetwork network, Random random)
    {
        (_car, _name, Network) = (car, $"phone-{number}-{car}", network);
        _clock = new FakeTimeProvider(new DateTimeOffset(2026, 3, 1, 18, 0, 0, TimeSpan.Zero).AddHours(random.Next(-48, 48)));
        _http = new(network, disposeHandler: false) { BaseAddress = server };
        _server = new(_http);
        Log = Opened();
    }

    public FaultyNetwork Network { get; }

    public CarLog Log { get; private set; }

    /// <summary>What the user was told is kept.</summary>
    public List<Guid> Acknowledged { get; } = [];

    public async Task WriteAsync(Happening happening) => Acknowledged.Add((await Log.WriteAsync(happening)).Id);

    /// <summary>The tab is closed and opened again: what was only in memory is gone.</summary>
    public async Task ReopenAsync()
    {
        Log.Dispose();
        Log = Opened();
        await Log.LoadAsync();
    }

    public void Dispose()
    {
        Log.Dispose();
        _http.Dispose();
        Network.Dispose();
    }

    private CarLog Opened() => new(_car, _name, _server, _keeper, _clock);
}
