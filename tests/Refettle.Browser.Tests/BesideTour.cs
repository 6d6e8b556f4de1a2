using Microsoft.Playwright;

namespace Refettle.Browser.Tests;

/// <summary>Pages that belong to no car: the bench numbers, pairing, an address that leads nowhere.</summary>
internal static class BesideTour
{
    public static async Task WalkAsync(Visit visit, Func<string, Task> look)
    {
        var page = visit.Page;
        await GoAsync("numbers", "Bench numbers");
        await look("numbers");
        await page.GetByRole(AriaRole.Link, new() { Name = "Chance of success from the tries so far" }).ClickAsync();
        await page.GetByLabel("successes", new() { Exact = true }).FillAsync("7");
        await page.GetByLabel("failures", new() { Exact = true }).FillAsync("13");
        await page.GetByRole(AriaRole.Button, new() { Name = "Work it out" }).ClickAsync();
        await page.Locator("section dd").First.WaitForAsync();
        await look("number");
        await GoAsync("not-found", "No such page");
        await look("not-found");
        await GoAsync("pair", "Pair this device");
        await look("pair");

        async Task GoAsync(string address, string heading)
        {
            await page.GotoAsync(new Uri(visit.Garage.Address, address).ToString());
            await page.GetByRole(AriaRole.Heading, new() { Name = heading, Exact = true }).WaitForAsync();
        }
    }
}
