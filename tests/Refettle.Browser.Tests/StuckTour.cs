using Microsoft.Playwright;

namespace Refettle.Browser.Tests;

/// <summary>A bolt that will not come loose: what to try, what came of it, whether to open up first.</summary>
internal static class StuckTour
{
    public static async Task WalkAsync(Visit visit, Func<string, Task> look)
    {
        var page = visit.Page;
        await visit.GoAsync("stuck/shackle-left");
        await page.Locator(".now").WaitForAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Rubber and plastic near it are shielded" }).ClickAsync();
        await look("stuck-joint");
        await page.Locator(".now .row button").Last.ClickAsync();
        await visit.GoAsync("stuck");
        await page.GetByRole(AriaRole.Heading, new() { Name = "Tried so far" }).WaitForAsync();
        await look("stuck");
        await visit.GoAsync("open-up");
        await page.GetByRole(AriaRole.Searchbox).FillAsync("left leaf spring body shell");
        await page.Keyboard.PressAsync("Enter");
        await page.GetByRole(AriaRole.Button, new() { Name = "Weigh it" }).ClickAsync();
        await page.GetByText("Weighing").WaitForAsync(new() { State = WaitForSelectorState.Hidden });
        await look("open-up");
    }
}
