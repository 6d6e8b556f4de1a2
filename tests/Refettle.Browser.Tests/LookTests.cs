using Microsoft.Playwright;

namespace Refettle.Browser.Tests;

public sealed class LookTests(Bench bench) : IClassFixture<Bench>
{
    [Fact]
    public async Task Looks()
    {
        var folder = Environment.GetEnvironmentVariable("SHOTS") ?? Path.GetTempPath();
        foreach (var dark in new[] { false, true })
        {
            await using var context = await bench.Browser!.NewContextAsync(new() { ViewportSize = new() { Width = 390, Height = 844 }, ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light, HasTouch = true });
            var page = await context.NewPageAsync();
            page.Console += (_, message) => Console.WriteLine(message.Text);
            page.PageError += (_, message) => Console.WriteLine(message);
            await page.GotoAsync(bench.Address);
            await page.WaitForURLAsync("**/car/**");
            await page.GetByRole(AriaRole.Searchbox).FillAsync("axle");
            await Shot("search");
            await page.GetByRole(AriaRole.Button, new() { Name = "Rear axle" }).First.ClickAsync();
            await page.Locator(".now").WaitForAsync();
            await Shot("next");
            await page.GetByRole(AriaRole.Link, new() { Name = "All steps" }).ClickAsync();
            await page.Locator(".tag").First.WaitForAsync();
            await Shot("off", full: true);
            await page.GetByRole(AriaRole.Button, new() { Name = "Drawing" }).ClickAsync();
            await page.Locator("svg.plan").ScrollIntoViewIfNeededAsync();
            await Shot("drawing");
            await page.SetViewportSizeAsync(1440, 900);
            await Shot("laptop");
            await page.SetViewportSizeAsync(390, 844);
            await page.GotoAsync($"{bench.Address}/car/small-heron/part/rear-axle");
            await page.Locator("dl").First.WaitForAsync();
            await Shot("part", full: true);
            await page.GotoAsync($"{bench.Address}/car/small-heron/parts");
            await page.Locator("summary").First.ClickAsync();
            await Shot("parts");
            await page.GotoAsync($"{bench.Address}/car/small-heron/log");
            await page.Locator(".log").WaitForAsync();
            await Shot("log");

            async Task Shot(string name, bool full = false) =>
                await page.ScreenshotAsync(new() { Path = Path.Combine(folder, $"{name}{(dark ? "-dark" : "")}.png"), FullPage = full });
        }
    }
}
