using Refettle.Logbook;
using Refettle.Stock;

namespace Refettle.Tests.Stock;

public sealed class ShelfTests
{
    private static readonly (string, string) Damper = (Garage.Estate, "part damper");

    [Fact]
    public void What_goes_off_first_is_taken_first_and_what_is_too_old_is_left()
    {
        var garage = new Garage("bench").Opened();
        garage.Write(Garage.Estate, new NumberDescribed(new() { Id = "SEAL", ShelfLifeMonths = 12 }, []));
        foreach (var (made, count) in new[] { (-30, 2), (-400, 3), (-200, 1) })
            Count(garage, new("SEAL", Made: Garage.Day(made)), count);
        var picks = Picking.Of(garage.Shelf(), "SEAL", 2, Garage.Day(0)).Value;
        Assert.Equal([new(new("SEAL", Made: Garage.Day(-200)), 1), new(new("SEAL", Made: Garage.Day(-30)), 1)], picks);
        Assert.Contains("too old", Assert.Single(Picking.Of(garage.Shelf(), "SEAL", 4, Garage.Day(0)).Faults).Found,
            StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_kept_for_one_car_is_not_given_to_the_other()
    {
        var garage = new Garage("bench").Opened();
        Count(garage, new("BUSH"), 2);
        garage.Write(Garage.Saloon, new Reserved("part damper", "BUSH", 2));
        Assert.Equal(0, Picking.Free(garage.Shelf(), "BUSH"));
        Assert.False(ShelfWork.Fitted(garage.Shelf(), "BUSH", 1, 0, Damper, Garage.Day(1)).IsGood);
        garage.Do(Garage.Saloon, ShelfWork.Fitted(garage.Shelf(), "BUSH", 1, 0, (Garage.Saloon, "part damper"), Garage.Day(1)));
        Assert.Equal(1, Assert.Single(garage.Shelf().Claims).Count);
        garage.Write(Garage.Saloon, new StructureRemoved(["part damper"]));
        Assert.Empty(garage.Shelf().Claims);
        Assert.Equal(1, Picking.Free(garage.Shelf(), "BUSH"));
    }

    [Fact]
    public void What_went_on_before_uses_up_nothing_that_is_kept_afterwards()
    {
        var garage = new Garage("bench").Opened();
        Count(garage, new("BUSH"), 3);
        garage.Do(Garage.Saloon, ShelfWork.Fitted(garage.Shelf(), "BUSH", 1, 0, (Garage.Saloon, "part damper"), Garage.Day(1)));
        var entry = garage.Write(Garage.Saloon, new Reserved("part damper", "BUSH", 1));
        Assert.Equal(new Claim(Garage.Saloon, "part damper", "BUSH", 1, [entry]), Assert.Single(garage.Shelf().Claims));
        garage.Do(Garage.Saloon, ShelfWork.Fitted(garage.Shelf(), "BUSH", 1, 0, (Garage.Saloon, "part damper"), Garage.Day(2)));
        Assert.Empty(garage.Shelf().Claims);
    }

    [Fact]
    public void A_kit_that_is_opened_gives_its_contents_once()
    {
        var garage = new Garage("bench").Opened();
        garage.Write(Garage.Estate, new NumberDescribed(new() { Id = "KIT", Contains = [new("SEAL", 2), new("BOOT", 1)] }, []));
        Count(garage, new("KIT"), 2);
        garage.Do(Garage.Estate, ShelfWork.Opened(garage.Shelf(), "KIT", 1, Garage.Day(0)));
        var shelf = garage.Shelf();
        Assert.Equal((1, 2, 1), (shelf.OnHand("KIT"), shelf.OnHand("SEAL"), shelf.OnHand("BOOT")));
    }

    [Fact]
    public void A_part_robbed_from_the_donor_is_owed_until_it_is_made_good()
    {
        var garage = new Garage("bench").Opened();
        var used = new Batch("DAMPER", PieceCondition.Used);
        garage.Write(Garage.Estate,
            new PiecesMoved(used, 1, StockPlace.On(Garage.Saloon, "part damper"), StockPlace.On(Garage.Estate, "part damper"), null,
                "robbed"));
        Assert.Equal(new Debt(Garage.Saloon, "part damper", Garage.Estate, "DAMPER", 1), Assert.Single(garage.Shelf().Debts));
        Count(garage, new("DAMPER"), 1);
        garage.Do(Garage.Saloon, ShelfWork.Fitted(garage.Shelf(), "DAMPER", 1, 0, (Garage.Saloon, "part damper"), Garage.Day(9)));
        Assert.Empty(garage.Shelf().Debts);
    }

    [Fact]
    public void An_order_comes_in_pieces_under_a_newer_number_and_the_rest_is_cancelled()
    {
        var garage = new Garage("bench").Opened();
        garage.Write(Garage.Estate, new NumberDescribed(new() { Id = "OLD", SupersededBy = "NEW" }, []));
        garage.Write(Garage.Estate, new Ordered("Harbour Rubber", [new("OLD", 4, new(3.20m))], Garage.Day(0), Garage.Day(7), 30, null));
        garage.Write(Garage.Estate,
            OrderWork.Arrived(garage.Shelf(), garage.Shelf().Orders[0], [new("NEW", 3)], Garage.Day(9), null, null).Value);
        Assert.Equal((OrderState.PartlyArrived, 1, 3),
            (garage.Shelf().Orders[0].State, garage.Shelf().Orders[0].Lines[0].ToCome, garage.Shelf().OnHand("NEW")));
        garage.Write(Garage.Estate, OrderWork.Cancelled(garage.Shelf().Orders[0], []).Value);
        Assert.Equal(OrderState.Arrived, garage.Shelf().Orders[0].State);
        Assert.False(OrderWork.SentBack(garage.Shelf(), garage.Shelf().Orders[0], [new("NEW", 4)], Garage.Day(10), null).IsGood);
        garage.Write(Garage.Estate,
            OrderWork.SentBack(garage.Shelf(), garage.Shelf().Orders[0], [new("NEW", 1)], Garage.Day(10), "too long").Value);
        Assert.Equal(2, garage.Shelf().OnHand("NEW"));
    }

    /// <summary>What is named twice is no more than is there by being so.</summary>
    [Fact]
    public void A_number_that_is_named_twice_counts_with_both_its_counts()
    {
        var garage = new Garage("bench").Opened();
        garage.Write(Garage.Estate, new NumberDescribed(new() { Id = "OLD", SupersededBy = "NEW" }, []));
        garage.Write(Garage.Estate, new Ordered("Harbour Rubber", [new("OLD", 4)], Garage.Day(0), null, 30, null));
        Order Order() => garage.Shelf().Orders[0];
        Assert.False(OrderWork.Cancelled(Order(), [new("OLD", 3), new("OLD", 2)]).IsGood);
        Assert.Equal([new NumberCount("OLD", 4)],
            ((OrderCancelled)OrderWork.Cancelled(Order(), [new("OLD", 3), new("OLD", 1)]).Value).Lines);
        garage.Write(Garage.Estate,
            OrderWork.Arrived(garage.Shelf(), Order(), [new("OLD", 1), new("NEW", 1), new("OLD", 1)], Garage.Day(5), null, null).Value);
        Result<Happening> Back(params NumberCount[] lines) => OrderWork.SentBack(garage.Shelf(), Order(), [.. lines], Garage.Day(6), null);
        Assert.Equal("4 to go back, 3 came of it and are still here", Assert.Single(Back(new("OLD", 2), new("OLD", 2)).Faults).Found);
        Assert.Equal([("OLD", 2)],
            ((SentBack)Back(new("OLD", 1), new("OLD", 1)).Value).Lines.Select(line => (line.Batch.Number, line.Count)));

        // Two numbers for one line of the order: others of them lie on the shelf.
        Count(garage, new("OLD"), 4);
        Assert.Equal("4 to go back, 3 came of it and are still here", Assert.Single(Back(new("OLD", 3), new("NEW", 1)).Faults).Found);
    }

    [Fact]
    public void Things_that_come_back_and_are_named_twice_are_no_more_than_were_sent()
    {
        var garage = new Garage("bench").Opened();
        garage.Write(Garage.Estate, new SentOut("Plater", "zinc", [new("hooks", 3, null, [])], Garage.Day(0), null, null));
        Result<Happening> Back(params NumberCount[] items) =>
            OrderWork.CameBack(garage.Shelf().Outside[0], [.. items], "bright", true, PieceCondition.Refurbished, Garage.Day(30));
        Assert.False(Back(new("hooks", 2), new("hooks", 2)).IsGood);
        Assert.True(Back(new("hooks", 2), new("hooks", 1)).IsGood);
    }

    [Fact]
    public void What_leaves_for_an_outside_shop_is_away_until_it_is_checked_back()
    {
        var garage = new Garage("bench").Opened();
        Count(garage, new("CLIP", PieceCondition.Used), 5);
        garage.Write(Garage.Estate,
            new SentOut("Plater", "zinc",
                [new("clips", 5, new("CLIP", PieceCondition.Used), ["before.jpg"]), new("part tank", 1, null, [])], Garage.Day(0),
                Garage.Day(14), new(60)));
        Assert.Equal(0, garage.Shelf().OnHand("CLIP"));
        garage.Write(Garage.Estate,
            OrderWork.CameBack(garage.Shelf().Outside[0], [new("clips", 4)], "bright", good: true, PieceCondition.Refurbished,
                Garage.Day(30)).Value);
        var shelf = garage.Shelf();
        Assert.Equal(new Holding(new("CLIP", PieceCondition.Refurbished), 4), Assert.Single(shelf.Holdings));
        Assert.Equal([1, 1], shelf.Outside[0].Lines.Select(line => line.Away));
        Assert.False(OrderWork.CameBack(shelf.Outside[0], [new("clips", 2)], "bright", true, PieceCondition.New, Garage.Day(31)).IsGood);
        Assert.False(OrderWork.CameBack(shelf.Outside[0], [new("part roof", 1)], "", true, PieceCondition.New, Garage.Day(31)).IsGood);
    }

    [Fact]
    public void Two_descriptions_that_did_not_know_of_each_other_are_told_and_one_more_replaces_both()
    {
        var (here, there) = (new Garage("here").Opened(), new Garage("there"));
        there.Learn(here.Known);
        here.Write(Garage.Estate, ShelfWork.Described(Garage.Histories(here.Known), new() { Id = "SEAL", Name = "Seal" }));
        there.Write(Garage.Saloon, ShelfWork.Described(Garage.Histories(there.Known), new() { Id = "SEAL", Name = "Ring" }));
        here.Learn(there.Known);
        Assert.Single(here.Shelf().Faults);
        here.Write(Garage.Saloon, ShelfWork.Described(Garage.Histories(here.Known), new() { Id = "SEAL", Name = "Ring seal" }));
        Assert.Empty(here.Shelf().Faults);
        Assert.Equal("Ring seal", here.Shelf().NameOf("SEAL"));
    }

    [Fact]
    public void Newer_numbers_serve_for_older_ones_and_older_ones_only_where_it_is_said()
    {
        PartNumber[] numbers = [new() { Id = "A", SupersededBy = "B" }, new() { Id = "B", SupersededBy = "C", ServesForNew = true },
            new() { Id = "C", Substitutes = [new("X", "cut a slit")] }];
        var family = new Family(numbers);
        Assert.Equal(["A", "B", "C", "X"], family.ServingFor("A").Select(one => one.Number));
        Assert.Equal(["C", "B", "X"], family.ServingFor("C").Select(one => one.Number));
        Assert.Equal("C", family.Current("A"));
        Assert.Equal("A",
            new Family([new() { Id = "A", SupersededBy = "B" }, new() { Id = "B", SupersededBy = "A" }]).ServingFor("A")[0].Number);
    }

    private static void Count(Garage garage, Batch batch, int count)
    {
        foreach (var happening in ShelfWork.Counted(garage.Shelf(), batch, count, Garage.Day(0)))
            garage.Write(Garage.Estate, happening);
    }
}
