using Microsoft.Playwright;
using Refettle.Logbook;
using Refettle.Server.Tests;

namespace Refettle.Browser.Tests;

public sealed class MainFlowTests(Bench bench) : IClassFixture<Bench>
{
    [NeedsChromiumFact]
    public async Task A_goal_gives_steps_each_with_a_reason_to_mark_and_unmark()
    {
        await using var visit = await bench.VisitAsync(Looks.Phone());
        var page = visit.Page;
        await visit.AskForAxleAsync();
        var first = await page.Locator(".now .says").InnerTextAsync();
        await page.GetByText("Why").ClickAsync();
        await Assertions.Expect(page.GetByText("what you want.")).ToBeVisibleAsync();

        await page.GetByRole(AriaRole.Button, new() { Name = "Done", Exact = true }).ClickAsync();
        await Assertions.Expect(page.Locator(".now .says")).Not.ToHaveTextAsync(first);
        await Assertions.Expect(page.GetByText("All in the logbook")).ToBeVisibleAsync();
        Assert.Single(Marks(visit));

        await page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await Assertions.Expect(page.Locator(".now .says")).ToHaveTextAsync(first);
        Assert.True(!visit.Complaints.Any(), string.Join("\n", visit.Complaints));
    }

    [NeedsChromiumFact]
    public async Task Marks_made_without_a_network_are_kept_over_a_while_and_sent_when_it_is_back()
    {
        await using var visit = await bench.VisitAsync(Looks.Phone());
        var page = visit.Page;
        await visit.AskForAxleAsync();
        await visit.GoOfflineAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Done", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Done", Exact = true }).ClickAsync();
        await Assertions.Expect(page.GetByText("2 kept on this device")).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Plan", Exact = true }).ClickAsync();
        await Assertions.Expect(page.Locator(".tag.done")).ToHaveCountAsync(2);
        Assert.Empty(Marks(visit));

        await visit.Context.SetOfflineAsync(false);
        await Assertions.Expect(page.GetByText("All in the logbook")).ToBeVisibleAsync(new() { Timeout = 30_000 });
        Assert.Equal(2, Marks(visit).Count);
        Assert.True(!visit.Complaints.Any(), string.Join("\n", visit.Complaints));
    }

    private static List<Entry> Marks(Visit visit) =>
        [.. visit.Garage.Logbook.Read(SmallCar.Id).Select(kept => kept.Entry).Where(entry => entry.Kind == "step-done")];
}
