using Microsoft.Playwright;

namespace Refettle.Browser.Tests;

/// <summary>A job is thought of, braked, weighed against the limits; what else is worth doing is added.</summary>
internal static class ScopeTour
{
    public static async Task WalkAsync(Visit visit, Func<string, Task> look)
    {
        var page = visit.Page;
        await EnterAsync(visit, "New dampers", "Left damper");
        await look("job");
        await Press(page, "Keep");
        await page.GetByLabel("Hours").GetByText("no limit").WaitForAsync();
        await Press(page, "More hours");
        await Press(page, "Keep these limits");
        await EnterAsync(visit, "Axle as new", "Rear axle");
        await page.GetByLabel("Its own work, hours").FillAsync("60");
        await Press(page, "Keep");
        await page.GetByText("It does not fit").WaitForAsync();
        await look("job-brake");
        await Press(page, "Take it on all the same");
        await Press(page, "Work it out");
        await page.GetByRole(AriaRole.Heading, new() { Name = "In", Exact = true }).WaitForAsync();
        await Press(page, "What would more time bring?");
        await page.Locator("figure.frontier").WaitForAsync();
        await Press(page, "What else, since it is open?");
        await page.GetByRole(AriaRole.Heading, new() { Name = "Since it is open" }).WaitForAsync();
        await look("scope");
    }

    private static async Task EnterAsync(Visit visit, string name, string opens)
    {
        await visit.GoAsync("job");
        await visit.Page.GetByLabel("What is to be done").FillAsync(name);
        await visit.Page.GetByRole(AriaRole.Searchbox, new() { Name = "What has to be open for it" }).FillAsync(opens);
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = opens }).First.ClickAsync();
        await visit.Page.GetByLabel("What it is worth").FillAsync("900");
    }

    private static Task Press(IPage page, string button) =>
        page.GetByRole(AriaRole.Button, new() { Name = button, Exact = true }).ClickAsync();
}
