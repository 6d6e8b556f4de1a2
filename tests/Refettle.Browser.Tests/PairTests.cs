using Microsoft.Playwright;

namespace Refettle.Browser.Tests;

/// <summary>Pairing as a phone does it: with the form of the page, and with the origin that a browser sends along (Fetch standard,
/// "append a request Origin header").</summary>
public sealed class PairTests(Bench bench) : IClassFixture<Bench>
{
    [NeedsChromiumFact]
    public async Task A_phone_is_paired_with_the_form_and_a_wrong_code_says_so_there()
    {
        await using var visit = await bench.VisitAsync(Looks.Phone(), toNetwork: true);
        var page = visit.Page;
        await page.GotoAsync(new Uri(visit.Garage.Address, "pair").ToString());
        await page.GetByLabel("Code").FillAsync("AAAAA-AAAAA");
        await page.GetByRole(AriaRole.Button, new() { Name = "Pair" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("Each works once");
        await page.GetByLabel("Code").FillAsync(visit.Garage.Logbook.Devices.NewCode().Value);
        await page.GetByRole(AriaRole.Button, new() { Name = "Pair" }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Small Heron" }).WaitForAsync();
        Assert.Equal("Phone", Assert.Single(visit.Garage.Logbook.Devices.All()).Name);
    }
}
