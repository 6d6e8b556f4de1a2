using Microsoft.Playwright;

namespace Refettle.Browser.Tests;

public sealed class KeyboardTests(Bench bench) : IClassFixture<Bench>
{
    [NeedsChromiumFact]
    public async Task A_question_is_asked_a_step_marked_and_a_box_opened_without_a_pointer()
    {
        await using var visit = await bench.VisitAsync(Looks.Laptop());
        var page = visit.Page;
        await TabToAsync(page, "input[type=search]");
        await page.Keyboard.TypeAsync("rear axle");
        await page.Keyboard.PressAsync("Enter");
        await page.Locator(".now").WaitForAsync();
        await TabToAsync(page, ".reach .main");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.GetByText("1 of 13 done")).ToBeVisibleAsync();

        await visit.GoAsync("off");
        await TabToAsync(page, "g.box[data-step~='1']");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator(".chosen .tag").First).ToBeVisibleAsync();
        await TabToAsync(page, ".chosen .tick[aria-pressed=false]");
        await page.Keyboard.PressAsync(" ");
        await Assertions.Expect(page.GetByText("2 of 13 done").Or(page.Locator(".chosen .tag.done")).First).ToBeVisibleAsync();
    }

    /// <summary>Presses Tab until the focus is there; a user would give up too.</summary>
    private static async Task TabToAsync(IPage page, string selector)
    {
        for (var presses = 0; presses < 120; presses++)
        {
            await page.Keyboard.PressAsync("Tab");
            if (await page.EvaluateAsync<bool>("selector => document.activeElement.matches(selector)", selector))
                return;
        }

        Assert.Fail($"Tab does not come to {selector}.");
    }
}
