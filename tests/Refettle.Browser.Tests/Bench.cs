using Microsoft.Playwright;
using Refettle.Server.Tests;
using Refettle.Stuck;
using Refettle.Web.Garage;

namespace Refettle.Browser.Tests;

/// <summary>Chromium, and nothing else; each test opens a garage of its own.</summary>
public sealed class Bench : IAsyncLifetime
{
    /// <summary>Debian's package puts it here.</summary>
    public const string Chromium = "/usr/bin/chromium";

    private static readonly string[] Flags =
        ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"];

    private IPlaywright? _playwright;
    private IBrowser? _browser;

    public async Task InitializeAsync()
    {
        if (!File.Exists(Chromium))
            return;
        // Generous: the tests share the machine with others, and what they wait for is that it comes, not how soon.
        Assertions.SetDefaultExpectTimeout(30_000);
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(new() { ExecutablePath = Chromium, Args = Flags });
    }

    public async Task DisposeAsync()
    {
        if (_browser is not null)
            await _browser.DisposeAsync();
        _playwright?.Dispose();
    }

    /// <summary>A fresh browser that has seen nothing yet.</summary>
    internal Task<IBrowserContext> ContextAsync(BrowserNewContextOptions look) => _browser!.NewContextAsync(look);

    /// <summary>A fresh browser at the garage's first page.</summary>
    internal async Task<Visit> VisitAsync(BrowserNewContextOptions look, KitTable? kits = null, bool toNetwork = false, LadderSet? ladders = null)
    {
        var garage = await TestGarage.OpenAsync(kits, toNetwork, ladders);
        var context = await _browser!.NewContextAsync(look);
        return await Visit.StartAsync(garage, context);
    }
}
