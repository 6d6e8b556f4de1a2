using Microsoft.Playwright;
using Refettle.Logbook;
using Refettle.Server.Tests;

namespace Refettle.Browser.Tests;

/// <summary>The pages about stock, with something to order, to try on, to come and away.</summary>
internal static class StockTour
{
    private static readonly DateOnly _day = new(2026, 3, 1);

    public static async Task WalkAsync(Visit visit, Func<string, Task> look)
    {
        Assert.True(visit.Garage.Logbook.Write(SmallCar.Id, Stock()).IsGood);
        await visit.GoAsync("shelf");
        await visit.Page.Locator("summary").First.ClickAsync();
        await look("shelf");
        await visit.GoAsync("basket");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Ordered: D-1" }).WaitForAsync();
        await look("basket");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Ordered: D-1" }).ClickAsync();
        await visit.GoAsync("orders");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Came: D-1" }).WaitForAsync();
        await look("orders");
    }

    private static IEnumerable<Happening> Stock()
    {
        yield return new NumberAssigned("part damper-left", "D-1", 1);
        yield return new VerdictGiven(new("damper-left", VerdictKind.Replace, DoneBy.Self, null));
        yield return new OffersListed("Harbour Rubber", "EUR",
            [new("D-1", "Damper", new(64), 1, 1, 9), new("B-2", "Bush", new(3.2m), 2, 2, 9)], _day);
        yield return new PiecesMoved(new("B-2"), 2, StockPlace.Counting, StockPlace.Shelf, _day, "counted");
        yield return new Reserved("part damper-left", "B-2", 1);
        yield return new PiecesWanted("part damper-right", 2);
        yield return new SentOut("Tidewater Plating", "zinc", [new("bracket bolts", 24, null, ["bolts.jpg"])], _day, _day.AddDays(20),
            null);
    }
}
