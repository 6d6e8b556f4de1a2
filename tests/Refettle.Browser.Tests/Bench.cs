using Microsoft.Playwright;
using Refettle.Server.Tests;
using Refettle.Stuck;
using Refettle.Web.Garage;

namespace Refettle.Browser.Tests;

/// <summary>A browser, and nothing else; each test opens a garage of its own.</summary>
public sealed class Bench : Chromium
{
    /// <summary>A fresh browser at the garage's first page.</summary>
    internal async Task<Visit> VisitAsync(
        BrowserNewContextOptions look, KitTable? kits = null, bool toNetwork = false, LadderSet? ladders = null)
    {
        var garage = await TestGarage.OpenAsync(kits, toNetwork, ladders);
        return await Visit.StartAsync(garage, await ContextAsync(look));
    }
}
