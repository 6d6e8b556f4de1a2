using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Refettle.Server.Tests;

namespace Refettle.Browser.Tests;

/// <summary>A page stands there as it was shown last until the program has begun. Without the service worker, so that the
/// program can be kept from coming.</summary>
public sealed class ShownTests(Bench bench) : IClassFixture<Bench>
{
    private static readonly Regex Program = new("dotnet\\.native\\..*\\.wasm");

    [NeedsChromiumFact]
    public async Task A_page_is_read_as_it_was_shown_last_and_pressed_once_it_is_drawn_anew()
    {
        await using var garage = await TestGarage.OpenAsync();
        var look = Looks.Phone();
        look.ServiceWorkers = ServiceWorkerPolicy.Block;
        await using var context = await bench.ContextAsync(look);
        var page = await context.NewPageAsync();
        await page.GotoAsync(new Uri(garage.Address, $"car/{SmallCar.Id}/part/rear-axle").ToString());
        await page.GetByRole(AriaRole.Heading, new() { Name = "Rear axle" }).WaitForAsync();
        await page.GetByText("All in the logbook").WaitForAsync();

        await context.RouteAsync(Program, _ => Task.CompletedTask);
        await page.ReloadAsync(new() { WaitUntil = WaitUntilState.Commit });
        var shown = page.Locator("#shown");
        await Assertions.Expect(shown.Locator(".kept")).ToHaveTextAsync(new Regex("^As of [0-9]{2}:[0-9]{2}, opening$"));
        await Assertions.Expect(shown.GetByText("Rear axle").First).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("#app")).ToContainTextAsync("Opening the garage");
        await Assert.ThrowsAsync<TimeoutException>(
            () => shown.GetByText("Log", new() { Exact = true }).ClickAsync(new() { Timeout = 500 }));

        await context.UnrouteAsync(Program);
        await page.ReloadAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Log" }).ClickAsync();
        await Assertions.Expect(shown).ToHaveCountAsync(0);
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Log", Exact = true })).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator(".kept")).ToHaveTextAsync("All in the logbook");
    }
}
