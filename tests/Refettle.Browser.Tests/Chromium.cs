using Microsoft.Playwright;

namespace Refettle.Browser.Tests;

/// <summary>The browser of Debian's package, without a window.</summary>
public class Chromium : IAsyncLifetime
{
    public const string Program = "/usr/bin/chromium";

    private static readonly string[] Flags =
        ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
            "--disable-component-update", "--disable-sync"];

    private IPlaywright? _playwright;
    private IBrowser? _browser;

    public async Task InitializeAsync()
    {
        if (!File.Exists(Program))
            return;
        // Generous: the tests share the machine with others, and what they wait for is that it comes, not how soon.
        Assertions.SetDefaultExpectTimeout(30_000);
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(new() { ExecutablePath = Program, Args = Flags });
    }

    public async Task DisposeAsync()
    {
        if (_browser is not null)
            await _browser.DisposeAsync();
        _playwright?.Dispose();
    }

    /// <summary>A fresh browser that has seen nothing yet.</summary>
    internal Task<IBrowserContext> ContextAsync(BrowserNewContextOptions look) => _browser!.NewContextAsync(look);
}
