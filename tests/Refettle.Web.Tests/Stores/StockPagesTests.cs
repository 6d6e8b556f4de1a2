using Bunit;
using Refettle.Logbook;
using Refettle.Stock;
using Refettle.Web.Garage;
using Refettle.Web.Pages;
using Refettle.Web.Stores;
using Refettle.Web.Tests.Garage;
using Refettle.Web.Times;

namespace Refettle.Web.Tests.Stores;

/// <summary>The pages over the logs of two cars, as a server has them.</summary>
public sealed class StockPagesTests : BunitContext
{
    private readonly FaultyServer _server = new();

    public StockPagesTests() => Services.AddGarage(_server);

    [Fact]
    public async Task Two_cars_share_the_shelf_and_what_is_counted_on_the_page_is_there()
    {
        await WriteAsync("saloon", new CarOpened("Saloon", null, "EUR"),
            new PiecesMoved(new("4410-22"), 2, StockPlace.Counting, StockPlace.Shelf, null, null));
        await WriteAsync("estate", new CarOpened("Estate", null, "EUR"),
            new NumberDescribed(new() { Id = "4410-22", Name = "Shackle bush" }, []));
        var page = Render<ShelfPage>(parameters => parameters.Add(shown => shown.Id, "estate"));
        page.WaitForAssertion(() => Assert.Contains("2 new", page.Find("summary").TextContent));
        await page.TouchAsync("#count-number", element => element.InputAsync("4410-22"));
        await page.TouchAsync("#count-new", element => element.InputAsync("5"));
        await page.TouchAsync("form", element => element.SubmitAsync(), ^1);
        page.WaitForAssertion(() => Assert.Contains("5 new", page.Find("summary").TextContent));
    }

    [Fact]
    public async Task What_is_kept_is_told_by_the_name_of_its_place_and_car()
    {
        Structure lid = new()
        { Zones = [new() { Id = "boot", Name = "Boot" }], Parts = [new() { Id = "lid", Name = "Boot lid", Zone = "boot" }] };
        await WriteAsync("saloon", new CarOpened("Saloon", null, "EUR"),
            new PiecesMoved(new("4410-22"), 2, StockPlace.Counting, StockPlace.Shelf, null, null));
        await WriteAsync("estate", new CarOpened("Estate", null, "EUR"), new StructureAdded("sheet", lid, []),
            new Reserved("part lid", "4410-22", 1));
        var page = Render<ShelfPage>(parameters => parameters.Add(shown => shown.Id, "saloon"));
        page.WaitForAssertion(() => Assert.Contains("1 kept for Boot lid, Estate", page.Markup, StringComparison.Ordinal));
    }

    [Fact]
    public async Task What_came_is_written_into_the_log_that_has_the_order()
    {
        await WriteAsync("saloon", new CarOpened("Saloon", null, "EUR"),
            new Ordered("Harbour Rubber", [new("4410-22", 2)], new(2026, 3, 1), null, null, null));
        await WriteAsync("estate", new CarOpened("Estate", null, "EUR"));
        var page = Render<OrdersPage>(parameters => parameters.Add(shown => shown.Id, "estate"));
        await page.TouchAsync("button[aria-label='Came: 4410-22']", element => element.ClickAsync());
        page.WaitForAssertion(() => Assert.Contains("Nothing is to come", page.Markup));
        page.WaitForAssertion(() => Assert.Equal("saloon", _server.Entries.Single(entry => entry.Kind == "arrived").Car));
    }

    [Fact]
    public async Task What_was_asked_for_is_in_the_basket_until_it_is_not_needed()
    {
        Structure lid = new()
        { Zones = [new() { Id = "boot", Name = "Boot" }], Parts = [new() { Id = "lid", Name = "Boot lid", Zone = "boot" }] };
        await WriteAsync("estate", new CarOpened("Estate", null, "EUR"), new StructureAdded("sheet", lid, []),
            new PiecesWanted("part lid", 2));
        var page = Render<BasketPage>(parameters => parameters.Add(shown => shown.Id, "estate"));
        await page.TouchAsync("button[aria-label='Not needed: Boot lid']", element => element.ClickAsync());
        page.WaitForAssertion(() => Assert.DoesNotContain("Boot lid", page.Find("main").TextContent));
        page.WaitForAssertion(() => Assert.Equal(["pieces-wanted", "pieces-wanted"],
            _server.Entries.Select(entry => entry.Kind).Where(kind => kind == "pieces-wanted")));
    }

    [Fact]
    public async Task What_comes_back_is_checked_before_it_counts()
    {
        await WriteAsync("estate", new CarOpened("Estate", null, "EUR"),
            new SentOut("Plater", "zinc", [new("bolts", 8, null, [])], new(2026, 3, 1), null, null));
        var page = Render<OrdersPage>(parameters => parameters.Add(shown => shown.Id, "estate"));
        page.WaitForAssertion(() => Assert.True(page.Find("fieldset button.main").HasAttribute("disabled")));
        await page.TouchAsync("input[id$=found]", element => element.InputAsync("all there, bright"));
        await page.TouchAsync("fieldset button.main", element => element.ClickAsync());
        page.WaitForAssertion(() => Assert.Contains("nothing is away", page.Markup));
        page.WaitForAssertion(
            () => Assert.Contains("all there, bright", _server.Entries.Single(entry => entry.Kind == "came-back").Payload));
    }

    [Fact]
    public async Task Without_a_plan_the_basket_says_so()
    {
        await WriteAsync("estate", new CarOpened("Estate", null, "EUR"));
        var page = Render<BasketPage>(parameters => parameters.Add(shown => shown.Id, "estate"));
        page.WaitForAssertion(() => Assert.Contains("No plan is followed", page.Markup));
        Assert.DoesNotContain("/spells", page.Markup);
    }

    /// <summary>Jobs may be chosen long before anyone says when he works: what they use up is asked for with the timeline.</summary>
    [Fact]
    public async Task With_jobs_and_no_spells_the_basket_leads_to_the_spells()
    {
        await WriteAsync("estate", new CarOpened("Estate", null, "EUR"),
            new JobEntered(new() { Id = "brakes", Name = "Brakes", Goals = [] }), new ScopeChosen(["brakes"]));
        var page = Render<BasketPage>(parameters => parameters.Add(shown => shown.Id, "estate"));
        page.WaitForAssertion(
            () => Assert.EndsWith("car/estate/spells", page.Find("main a.button").GetAttribute("href"), StringComparison.Ordinal));
    }

    /// <summary>No fault and no command line: a way to choose.</summary>
    [Fact]
    public async Task Without_a_chosen_job_timeline_tonight_and_forecast_lead_to_the_choice()
    {
        await WriteAsync("estate", new CarOpened("Estate", null, "EUR"),
            new SpellAdded(new()
            { Id = "evenings", First = new(2026, 3, 1), From = new(18, 0), Until = new(21, 0), Repeats = new(Rhythm.Daily, 1, []) }));
        Leads(Render<TimelinePage>(parameters => parameters.Add(shown => shown.Id, "estate")));
        Leads(Render<TonightPage>(parameters => parameters.Add(shown => shown.Id, "estate")));
        Leads(Render<ForecastPage>(parameters => parameters.Add(shown => shown.Id, "estate")));

        static void Leads<T>(IRenderedComponent<T> page)
            where T : Microsoft.AspNetCore.Components.IComponent
        {
            page.WaitForAssertion(() => Assert.Equal("/car/estate/scope", "/" + page.Find("a.button.main").GetAttribute("href")));
            Assert.Contains("No job is chosen yet", page.Markup, StringComparison.Ordinal);
            Assert.DoesNotContain("refettle scope", page.Markup, StringComparison.Ordinal);
        }
    }

    private async Task WriteAsync(string car, params Happening[] happenings)
    {
        using var log = new CarLog(car, "bench", _server.Api, new MemoryKeeper(), TimeProvider.System);
        foreach (var happening in happenings)
            await log.WriteAsync(happening);
        await log.SyncAsync();
    }
}
