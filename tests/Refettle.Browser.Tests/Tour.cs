using Microsoft.Playwright;

namespace Refettle.Browser.Tests;

/// <summary>Every page, in the states that a user sees them in.</summary>
internal static class Tour
{
    /// <summary>Shows each page in turn and calls for it.</summary>
    public static async Task WalkAsync(Visit visit, Func<string, Task> look)
    {
        var page = visit.Page;
        await page.GetByRole(AriaRole.Searchbox).WaitForAsync();
        await look("question");
        await visit.AskForAxleAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Done", Exact = true }).ClickAsync();
        await Assertions.Expect(page.GetByText("1 of 13 done")).ToBeVisibleAsync();
        await page.GetByText("Why").ClickAsync();
        await look("next");
        await PlanAsync(page, look);
        await TimeAsync(visit, look);
        await DescriptionAsync(visit, look);
        await page.GetByRole(AriaRole.Link, new() { Name = "Log", Exact = true }).ClickAsync();
        await page.Locator(".log").WaitForAsync();
        await look("log");
        await page.GetByRole(AriaRole.Link, new() { Name = "More", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "More" }).WaitForAsync();
        await look("more");
        await JudgingAsync(visit, look);
        await CaptureAsync(visit, look);
        await ScopeTour.WalkAsync(visit, look);
        await StockTour.WalkAsync(visit, look);
        await StuckTour.WalkAsync(visit, look);
        await CloseTour.WalkAsync(visit, look);
        await visit.GoAsync("more");
        await page.GetByRole(AriaRole.Link, new() { Name = "all cars" }).ClickAsync();
        await page.GetByLabel("A new car").WaitForAsync();
        await look("garage");
        await BesideTour.WalkAsync(visit, look);
    }

    private static async Task CaptureAsync(Visit visit, Func<string, Task> look)
    {
        var page = visit.Page;
        await visit.GoAsync("bag/14");
        await page.GetByLabel("What is in it").FillAsync("four washers");
        await page.GetByRole(AriaRole.Button, new() { Name = "Open the bag" }).ClickAsync();
        await page.Locator("input[type=file]").SetInputFilesAsync(Path.Combine(AppContext.BaseDirectory, "Files", "phone.jpg"));
        await page.GetByText("Photo kept").WaitForAsync();
        await page.Locator(".photos img").WaitForAsync();
        await look("bag");
        await page.Locator(".photos a").ClickAsync();
        await page.Locator("img.photo").WaitForAsync();
        await look("photo");
        await visit.GoAsync("ledger");
        await look("ledger");
        await visit.GoAsync("bags");
        await look("bags");
        await visit.GoAsync("sale");
        await look("sale");
        await visit.GoAsync("photos");
        await page.Locator(".photos img").WaitForAsync();
        await look("photos");
        await visit.GoAsync("part/damper-left");
        await page.GetByLabel("Say it in a line").FillAsync("leaks, need 2");
        await page.Locator(".understood").WaitForAsync();
        await look("quick-line");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep this" }).ClickAsync();
        await page.Locator(".quick").GetByRole(AriaRole.Button, new() { Name = "Undo" }).WaitForAsync();
        await look("line-kept");
    }

    private static async Task JudgingAsync(Visit visit, Func<string, Task> look)
    {
        var page = visit.Page;
        await visit.GoAsync("walk/rear-axle");
        await page.GetByRole(AriaRole.Button, new() { Name = "C", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep", Exact = true }).ClickAsync();
        await page.GetByText("surface rust: C").First.WaitForAsync();
        await look("walk");
        await visit.GoAsync("walk");
        await page.GetByRole(AriaRole.Searchbox).FillAsync("rear");
        await page.Locator(".found li").Nth(2).WaitForAsync();
        await look("walk-parts");
        await visit.GoAsync("verdicts");
        await page.GetByRole(AriaRole.Button, new() { Name = "Weigh all that was found" }).ClickAsync();
        await page.Locator("details summary").First.ClickAsync();
        await look("verdicts");
        await visit.GoAsync("baseline");
        await page.Locator("details summary").First.ClickAsync();
        await look("baseline");
    }

    private static async Task PlanAsync(IPage page, Func<string, Task> look)
    {
        await page.GetByRole(AriaRole.Link, new() { Name = "Plan", Exact = true }).ClickAsync();
        await page.Locator(".tag .says").Nth(2).ClickAsync();
        await page.GetByText("Change what is asked").ClickAsync();
        await look("steps");
        if (await page.GetByRole(AriaRole.Button, new() { Name = "Drawing" }).IsVisibleAsync())
            await page.GetByRole(AriaRole.Button, new() { Name = "Drawing" }).ClickAsync();
        await page.Locator("g.box").Nth(3).ClickAsync();
        await look("drawing");
        await page.GetByRole(AriaRole.Link, new() { Name = "Other ways" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Look for other ways" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "While you are there" }).WaitForAsync();
        await look("others");
    }

    private static async Task CoatingAsync(Visit visit, Func<string, Task> look)
    {
        var page = visit.Page;
        await visit.GoAsync("coating");
        await page.GetByLabel("Name on the tin").FillAsync("Grey epoxy");
        await page.GetByRole(AriaRole.Button, new() { Name = "Add product" }).ClickAsync();
        await page.GetByLabel("Part", new() { Exact = true }).SelectOptionAsync("rear-axle");
        await page.GetByLabel("Products in their order").FillAsync("grey-epoxy");
        await page.GetByRole(AriaRole.Button, new() { Name = "Choose", Exact = true }).ClickAsync();
        await page.GetByText("Keep bare").ClickAsync();
        await page.GetByText("Grey epoxy no data sheet").ClickAsync();
        await look("coating");
    }

    private static async Task TimeAsync(Visit visit, Func<string, Task> look)
    {
        var page = visit.Page;
        await visit.GoAsync("spells");
        await page.GetByLabel("Name").FillAsync("evenings");
        await page.GetByLabel("Tuesday").CheckAsync();
        await page.GetByLabel("Saturday").CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Add", Exact = true }).ClickAsync();
        await page.GetByText("evenings").WaitForAsync();
        await look("spells");
        await MeansAsync(visit, look);
        await CoatingAsync(visit, look);
        await visit.GoAsync("timeline");
        await page.Locator(".line").First.ClickAsync();
        await page.Locator(".task summary").ClickAsync();
        await look("timeline");
        await visit.GoAsync("forecast");
        await page.Locator("svg.finish").WaitForAsync();
        await look("forecast");
        await visit.GoAsync("tonight");
        await page.Locator(".offers li").First.WaitForAsync();
        await look("tonight");
    }

    /// <summary>What work needs, and a task of the owner's own that uses it.</summary>
    private static async Task MeansAsync(Visit visit, Func<string, Task> look)
    {
        var page = visit.Page;
        await visit.GoAsync("facilities");
        await page.GetByLabel("What it is").SelectOptionAsync("Place");
        await page.GetByLabel("Name").FillAsync("Welding bay");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep", Exact = true }).ClickAsync();
        await page.GetByText("Welding bay (a place for the car)").WaitForAsync();
        await page.GetByLabel("What it is").SelectOptionAsync("SprayCorner");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep", Exact = true }).ClickAsync();
        await page.GetByText("it has no name").WaitForAsync();
        await look("facilities");
        await visit.GoAsync("tasks");
        await page.GetByLabel("What is to be done").FillAsync("Weld the floor");
        await page.GetByLabel("Minutes").FillAsync("90");
        await page.GetByLabel("Welding bay").CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep", Exact = true }).ClickAsync();
        await page.GetByText("uses Welding bay").WaitForAsync();
        await page.GetByLabel("It comes before").FillAsync("test");
        await look("tasks");
    }

    private static async Task DescriptionAsync(Visit visit, Func<string, Task> look)
    {
        var page = visit.Page;
        await page.GetByRole(AriaRole.Link, new() { Name = "Car", Exact = true }).ClickAsync();
        await page.Locator("summary").First.ClickAsync();
        await look("parts");
        await page.GetByRole(AriaRole.Link, new() { Name = "Rear axle" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Rear axle" }).WaitForAsync();
        await page.Locator("summary").First.ClickAsync();
        await look("part");
        await page.Locator("details").GetByRole(AriaRole.Link, new() { Name = "Edit" }).First.ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Ways to open it" }).WaitForAsync();
        await look("edit-joint");
        await visit.GoAsync("edit/part/rear-axle");
        await page.GetByLabel("Mass, kg").FillAsync("heavy");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep" }).ClickAsync();
        await page.GetByText("Write a number").WaitForAsync();
        await look("edit-part");
        await visit.GoAsync("kits");
        await page.GetByRole(AriaRole.Button, new() { Name = "Add Tail lamp left" }).ClickAsync();
        await page.Locator(".added").WaitForAsync();
        await look("kits");
    }
}
