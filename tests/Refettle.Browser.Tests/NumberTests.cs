using Microsoft.Playwright;

namespace Refettle.Browser.Tests;

public sealed class NumberTests(Bench bench) : IClassFixture<Bench>
{
    [NeedsChromiumFact]
    public async Task A_number_is_worked_out_without_a_network()
    {
        await using var visit = await bench.VisitAsync(Looks.Phone());
        var page = visit.Page;
        await page.GetByRole(AriaRole.Link, new() { Name = "More", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Bench numbers" }).ClickAsync();
        await visit.GoOfflineAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Chance of success from the tries so far" }).ClickAsync();
        await page.GetByLabel("successes", new() { Exact = true }).FillAsync("7");
        await page.GetByLabel("failures", new() { Exact = true }).FillAsync("13");
        await page.GetByRole(AriaRole.Button, new() { Name = "Work it out" }).ClickAsync();
        // Beta(8, 14): mean 8/22.
        await Assertions.Expect(page.Locator("section dd").First).ToContainTextAsync("36.36 %");
        Assert.True(!visit.Complaints.Any(), string.Join("\n", visit.Complaints));
    }
}
