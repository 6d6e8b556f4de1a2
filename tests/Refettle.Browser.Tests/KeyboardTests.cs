using Microsoft.Playwright;
using Refettle.Logbook;
using Refettle.Server.Tests;

namespace Refettle.Browser.Tests;

/// <summary>What is done with keys alone: Tab to come to a thing, Enter or the space bar to press it, Escape to leave.</summary>
public sealed class KeyboardTests(Bench bench) : IClassFixture<Bench>
{
    private static readonly Spell _evenings = new()
    { Id = "evenings", First = new(2026, 1, 5), From = new(18, 0), Until = new(21, 0), Repeats = new(Rhythm.Daily, 1, []) };

    [NeedsChromiumFact]
    public async Task A_question_is_asked_a_step_marked_and_a_box_opened_without_a_pointer()
    {
        await using var visit = await bench.VisitAsync(Looks.Laptop());
        var (page, keys) = (visit.Page, new Keys(visit.Page));
        await keys.AskForAxleAsync();
        await keys.PressAsync(".reach .main", "Enter");
        await Assertions.Expect(page.GetByText("1 of 13 done")).ToBeVisibleAsync();

        await visit.GoAsync("off");
        await keys.PressAsync("g.box[data-step~='1']", "Enter");
        await Assertions.Expect(page.Locator(".chosen .tag").First).ToBeVisibleAsync();
        await keys.PressAsync(".chosen .tick[aria-pressed=false]", " ");
        await Assertions.Expect(page.GetByText("2 of 13 done").Or(page.Locator(".chosen .tag.done")).First).ToBeVisibleAsync();
    }

    [NeedsChromiumFact]
    public async Task An_evening_is_noted_without_a_pointer()
    {
        await using var visit = await bench.VisitAsync(Looks.Laptop());
        var (page, keys) = (visit.Page, new Keys(visit.Page));
        await page.GotoAsync(new Uri(visit.Garage.Address, "?all").ToString());
        await page.Locator(".found a").WaitForAsync();
        await keys.PressAsync($".found a[href='car/{SmallCar.Id}']", "Enter");
        await keys.AskForAxleAsync();
        await keys.PressAsync(".reach .main", " ");
        await Assertions.Expect(page.GetByText("1 of 13 done")).ToBeVisibleAsync();
        await keys.SayAsync("left leaf spring body bolt held after 2 soaks", "Tried: ");
        await keys.SayAsync("rear left damper leaks", "Condition: Rear left damper");
        await keys.PressAsync(".quick .row button", "Enter");
        await Assertions.Expect(page.GetByText("Kept: ")).ToBeHiddenAsync();
        await keys.SayAsync("rear right damper leaks", "Condition: Rear right damper");

        await keys.PressAsync(".ways a[href$=more]", "Enter");
        await page.Locator(".rooms").First.WaitForAsync();
        await keys.PressAsync(".rooms a[href$=bags]", "Enter");
        await page.GetByLabel("Code on the bag").WaitForAsync();
        await keys.TypeAsync("#bag-code", "14");
        await page.Keyboard.PressAsync("Enter");
        await page.GetByLabel("What is in it").WaitForAsync();
        await keys.TypeAsync("#bag-holds", "four washers");
        await keys.PressAsync("form button.main", " ");
        await Assertions.Expect(page.Locator("main li").GetByText("four washers")).ToBeVisibleAsync();
        await Assertions.Expect(page.GetByText("All in the logbook")).ToBeVisibleAsync();

        var history = CarHistory.Of(SmallCar.Id, visit.Garage.Logbook.Read(SmallCar.Id).Select(kept => kept.Entry));
        Assert.Equal("shackle-left", Assert.Single(history.Car.Tries).Joint);
        Assert.Equal("part damper-right", Assert.Single(history.Car.Findings).Of);
        Assert.Equal("four washers", Assert.Single(Assert.Single(history.Car.Bags).Holds));
        Assert.True(!visit.Complaints.Any(), string.Join("\n", visit.Complaints));
    }

    [NeedsChromiumFact]
    public async Task The_ways_are_passed_by_what_opens_is_left_and_a_task_moved_without_a_pointer()
    {
        await using var visit = await bench.VisitAsync(Looks.Phone());
        var (page, keys) = (visit.Page, new Keys(visit.Page));
        Assert.True(visit.Garage.Logbook.Write(SmallCar.Id, [new SpellAdded(_evenings)]).IsGood);
        await PassTheWaysAsync(visit, keys);
        await OpenAndLeaveAsync(page, keys);
        await visit.GoAsync("off");
        await keys.PressAsync(".switch button[aria-pressed=false]", " ");
        await Assertions.Expect(page.Locator(".drawing")).ToBeVisibleAsync();
        await MoveTaskAsync(visit, keys);
    }

    private static async Task PassTheWaysAsync(Visit visit, Keys keys)
    {
        await visit.GoAsync("");
        await visit.Page.Keyboard.PressAsync("Tab");
        await keys.PressAsync(".skip", "Enter");
        await visit.Page.Keyboard.PressAsync("Tab");
        Assert.True(await keys.IsAtAsync("main input[type=search]"), "The skip link leads past the ways, to the first target of the page.");
    }

    private static async Task OpenAndLeaveAsync(IPage page, Keys keys)
    {
        await page.Keyboard.TypeAsync("rear axle");
        await page.Keyboard.PressAsync("Escape");
        await Assertions.Expect(page.Locator(".found button").First).ToContainTextAsync("kg");
        await keys.TypeAsync("input[type=search]", "rear axle");
        await page.Keyboard.PressAsync("Enter");
        await page.Locator(".now").WaitForAsync();
        await keys.PressAsync("summary", " ");
        await Assertions.Expect(page.Locator("details[open]")).ToHaveCountAsync(1);
        await page.Keyboard.PressAsync("Escape");
        await Assertions.Expect(page.Locator("details[open]")).ToHaveCountAsync(0);
        await keys.PressAsync("label.check input", " ");
        await Assertions.Expect(page.Locator("label.check input").First).ToBeCheckedAsync();
    }

    /// <summary>What dragging does, from a list.</summary>
    private static async Task MoveTaskAsync(Visit visit, Keys keys)
    {
        var page = visit.Page;
        await visit.GoAsync("timeline");
        await keys.PressAsync(".line", "Enter");
        await page.Keyboard.PressAsync("Escape");
        await Assertions.Expect(page.Locator(".task")).ToHaveCountAsync(0);
        Assert.True(await keys.IsAtAsync(".line"), "Escape leads back to what opened the card.");
        await page.Keyboard.PressAsync("Enter");
        await page.Locator(".task").WaitForAsync();
        await keys.ComeToAsync(".task select");
        await page.Keyboard.PressAsync("ArrowDown");
        await keys.PressAsync(".task form:has(select) button", "Enter");
        await Assertions.Expect(page.GetByText("All in the logbook")).ToBeVisibleAsync();
        await Assertions.Expect(page.GetByText("Set it free")).ToBeVisibleAsync();
        await Assertions.Expect(page.GetByText("Putting it in order")).ToBeHiddenAsync();
        Assert.Contains(visit.Garage.Logbook.Read(SmallCar.Id), kept => kept.Entry.Kind == "task-fixed");
    }
}
