using Refettle.Logbook;
using Refettle.Stock;
using Refettle.Web.Stores;

namespace Refettle.Web.Tests.Stores;

public sealed class RoomTests
{
    private static readonly DateOnly _today = new(2026, 3, 10);

    private static readonly Refettle.Stock.Shelf _shelf = new()
    {
        Numbers = [new() { Id = "4410-22", Name = "Shackle bush" }, new() { Id = "77-1", Name = "Axle seal" }],
        Holdings = [new(new("4410-22"), 3), new(new("77-1", UseBy: new(2026, 3, 1)), 2)],
        Claims = [new("saloon", "part damper", "4410-22", 2, [])],
        Lists = [new("Harbour Rubber", "EUR", new(2026, 3, 1), [new("77-1", "", new(1.5m), 4, 4, 7)])],
        Orders = [new(Guid.Empty, "estate", "Harbour Rubber", new(2026, 3, 1), new(2026, 3, 8), new(2026, 3, 8), null, null,
            [new(new("4410-22", 5), [], 0, 0), new(new("77-1", 2), [], 0, 0)])],
        Outside = [new(Guid.Empty, "estate", "Plater", "zinc", new(2026, 2, 1), null, null, [new(new("bolts", 8, null, ["a.jpg"]), [])])],
    };

    private static readonly Car _car = new()
    {
        Id = "estate",
        Name = "Estate",
        Numbers = [new("part seal", "77-1", 2)],
        Structure = new() { Parts = [new() { Id = "seal", Name = "Axle seal" }, new() { Id = "axle", Name = "Axle" }] }
    };

    [Fact]
    public void The_shelf_is_found_by_number_name_and_place()
    {
        var room = new ShelfRoom(_shelf, _today);
        Assert.Equal(["4410-22"], room.Found("shackle", 9).Select(line => line.Number));
        Assert.Equal(["77-1"], room.Found("77", 9).Select(line => line.Number));
        Assert.Equal(["4410-22"], room.Found("damper", 9).Select(line => line.Number));
        Assert.Equal("3 new, 2 kept, 5 to come", ShelfRoom.Counts(room.Found("shackle", 1)[0]));
        Assert.Equal("none, 2 too old, 2 to come", ShelfRoom.Counts(room.Found("77", 1)[0]));
        Assert.Equal("1 free", ShelfRoom.Free(room.Found("shackle", 1)[0]));
        var kept = new ShelfRoom(_shelf with { Claims = [new("saloon", "part damper", "4410-22", 4, [])] }, _today);
        Assert.StartsWith("4 are kept and 3 are there", ShelfRoom.Free(kept.Found("shackle", 1)[0]), StringComparison.Ordinal);
        Assert.Equal("part seal", room.Places(_car, "77-1").MinBy(place => place.Rank)!.Key);
    }

    [Fact]
    public void One_tap_orders_what_is_sold_and_takes_the_named_days_as_the_promise()
    {
        var plan = new Access.Plan
        {
            Question = new() { Goals = [] },
            Status = Access.PlanStatus.Optimal,
            Steps = [new() { Fact = Fact.Off("axle"), Way = "", Says = "", Place = "", Posture = "", Destroys = ["seal"] }]
        };
        var room = new BasketRoom(_shelf with { Orders = [] }, [(new(_car, [], []), plan)], _today);
        var purchase = Assert.Single(room.Basket.Purchases);
        Assert.Equal(new Ordered("Harbour Rubber", [new("77-1", 4, new(1.5m))], _today, new DateOnly(2026, 3, 17), null, null),
            room.Order(purchase, "someone"));
        Assert.Equal("no date to meet is known", BasketRoom.OrderBy(purchase));
        Assert.Equal(["Axle seal"], room.Places(purchase));
        Assert.Equal(["Axle seal, Estate"],
            new BasketRoom(_shelf with { Orders = [] },
                [(new(_car, [], []), plan), (new(_car with { Id = "saloon", Name = "Saloon" }, [], []), null)], _today).Places(purchase));
        Assert.Equal("2 missing", BasketRoom.Standing(Assert.Single(room.Basket.Lines)));
        Assert.Equal("2 to come about Thu 2026-03-12",
            BasketRoom.Standing(Assert.Single(new BasketRoom(_shelf, [(new(_car, [], []), plan)], _today).Basket.Lines)));
    }

    [Fact]
    public void Orders_and_outside_work_say_how_long_and_how_late()
    {
        var room = new OrdersRoom(_shelf, _today);
        Assert.Equal("promised for Sun 2026-03-08, 2 days late", room.Promise(room.ToCome[0]));
        Assert.Equal("away 37 days, no day promised", room.Promise(room.Away[0]));
        Assert.IsType<Arrived>(Assert.Single(room.AllCame(room.ToCome[0]).Value));
        Assert.False(room.Back(room.Away[0], room.Away[0].Lines[0], 8, " ", true).IsGood);
        Assert.False(room.Back(room.Away[0], room.Away[0].Lines[0], 9, "bright", true).IsGood);
        Assert.IsType<CameBack>(Assert.Single(room.Back(room.Away[0], room.Away[0].Lines[0], 7, "one missing", true).Value));
    }
}
