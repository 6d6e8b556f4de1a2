using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Server;
using Refettle.Server.Tests;

namespace Refettle.Browser.Tests;

/// <summary>The server with a small car on a free port, and Chromium.</summary>
public sealed class Bench : IAsyncLifetime
{
    public const string Chromium = "/usr/bin/chromium";

    private static readonly string[] Flags =
        ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"];

    private MemoryLogbook? _logbook;
    private Microsoft.AspNetCore.Builder.WebApplication? _server;
    private IPlaywright? _playwright;

    public string Address { get; private set; } = "";

    public IBrowser? Browser { get; private set; }

    public async Task InitializeAsync()
    {
        if (!File.Exists(Chromium))
            return;
        _logbook = new(TimeProvider.System);
        _logbook.Write(SmallCar.Id, SmallCar.Happenings);
        _server = RefettleHost.Build(new() { Logbook = _logbook, Planner = new AccessPlanner(new ReducedSolver()) });
        await _server.StartAsync();
        Address = _server.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First();
        _playwright = await Playwright.CreateAsync();
        Browser = await _playwright.Chromium.LaunchAsync(new() { ExecutablePath = Chromium, Args = Flags });
    }

    public async Task DisposeAsync()
    {
        if (Browser is not null)
            await Browser.DisposeAsync();
        _playwright?.Dispose();
        if (_server is not null)
            await _server.DisposeAsync();
        _logbook?.Dispose();
    }
}
