using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Logbook;
using Refettle.Stock;
using Refettle.Stock.Baskets;
using Refettle.Tests.Logbook;

namespace Refettle.Tests.Stock;

public sealed class BasketTests
{
    [Fact]
    public void An_order_by_day_allows_for_how_late_the_supplier_is()
    {
        var shelf = Sold(new Offer("SEAL", "Seal", new(2), 10, 5, 10));
        var purchase = Assert.Single(BasketPlanner.Of(shelf, [Need("SEAL", 11, Garage.Day(40))], Garage.Day(0), 0.8).Purchases);
        Assert.Equal((15, new Money(30)), (purchase.Count, purchase.Cost));

        // Ten days named, times 1.5445 that four in five of an unknown supplier keep: sixteen whole days.
        Assert.Equal(Garage.Day(24), purchase.OrderBy);
        Assert.Equal(0, purchase.DaysTooLate);
        Assert.Equal(6,
            Assert.Single(BasketPlanner.Of(shelf, [Need("SEAL", 11, Garage.Day(10))], Garage.Day(0), 0.8).Purchases).DaysTooLate);
        Assert.Null(Assert.Single(BasketPlanner.Of(shelf, [Need("SEAL", 11, null)], Garage.Day(0), 0.8).Purchases).OrderBy);
    }

    [Fact]
    public void The_checker_finds_a_piece_given_twice_or_a_need_that_is_forgotten()
    {
        var shelf = new Shelf { Holdings = [new(new("SEAL"), 1)] };
        var basket = BasketPlanner.Of(shelf, [Need("SEAL", 1, null)], Garage.Day(0), 0.8);
        Assert.Empty(BasketCheck.Of(shelf, basket));
        Assert.Single(BasketCheck.Of(shelf, basket with { Lines = [basket.Lines[0], basket.Lines[0]] }));
        Assert.Single(BasketCheck.Of(shelf, basket with { Lines = [basket.Lines[0] with { Missing = 1 }] }));
        Assert.Single(BasketCheck.Of(shelf,
            basket with
            {
                Lines = [basket.Lines[0] with
                { Given = [basket.Lines[0].Given[0] with
                    { Supply = basket.Lines[0].Given[0].Supply with { For = ("saloon", "part damper") } }] }]
            }));
        Assert.Single(BasketCheck.Of(Shelf.Empty, basket));
    }

    [Fact]
    public void More_confidence_orders_earlier()
    {
        var shelf = Sold(new Offer("SEAL", "Seal", new(2), 1, 1, 10));
        DateOnly By(double confidence) =>
            BasketPlanner.Of(shelf, [Need("SEAL", 1, Garage.Day(90))], Garage.Day(0), confidence).Purchases[0].OrderBy!.Value;
        Assert.True(By(0.95) < By(0.8) && By(0.8) < By(0.5));
    }

    [Fact]
    public void A_number_that_is_superseded_is_bought_under_its_successor_and_a_substitute_on_the_shelf_serves_with_its_caveat()
    {
        var shelf = Sold(new Offer("NEW", "Seal", new(2))) with
        { Numbers = [new() { Id = "OLD", SupersededBy = "NEW", Substitutes = [new("SUB", "cut a slit")] }, new() { Id = "NEW" }] };
        Assert.Equal("NEW", Assert.Single(BasketPlanner.Of(shelf, [Need("OLD", 2, null)], Garage.Day(0), 0.8).Purchases).Number);
        var basket = BasketPlanner.Of(shelf with { Holdings = [new(new("SUB"), 1)] }, [Need("OLD", 2, null)], Garage.Day(0), 0.8);
        Assert.Equal("cut a slit", Assert.Single(basket.Lines[0].Given).Caveat);
        Assert.Equal(1, Assert.Single(basket.Purchases).Count);
    }

    [Fact]
    public void What_comes_too_late_serves_and_is_told_rather_than_ordered_twice()
    {
        var order = new Order(Guid.Empty, "estate", "Harbour Rubber", Garage.Day(0), Garage.Day(20), Garage.Day(20), null, null,
            [new(new("SEAL", 2), [], 0, 0)]);
        var basket = BasketPlanner.Of(new() { Orders = [order] }, [Need("SEAL", 2, Garage.Day(10))], Garage.Day(1), 0.8);
        Assert.Empty(basket.Purchases);
        Assert.Equal(21, Assert.Single(basket.Lines[0].Given).DaysLate);
    }

    [Fact]
    public void A_plan_asks_for_what_it_destroys_and_for_single_use_fasteners_once_each()
    {
        var history = SmallCar.After(new NumberAssigned("joint wheel-axle", "NUT-12", 5));
        var car = history.Car with
        {
            Structure = history.Car.Structure with
            {
                Joints = history.Car.Structure.Joints
                    .Select(joint => joint.Id == "wheel-axle" ? joint with { SingleUse = true, Count = 5 } : joint).ToValueList()
            }
        };
        history = history with { Car = car };
        var plan = new AccessPlanner(new ReducedSolver()).Reach(car, Question.For(Fact.Off("wheel")));
        var need = Assert.Single(PlanNeeds.Of(history, Shelf.Empty, plan, [], Garage.Day(9)), one => one.Thing == "joint wheel-axle");
        Assert.Equal(("NUT-12", 5, NeedReason.SingleUse), (need.Number, need.Count, need.Reason));
        var asked = PlanNeeds.Of(history, Shelf.Empty, plan, ["damper", "damper"], null);
        Assert.Single(asked, one => one.Thing == "part damper");
        Assert.Equal(asked.Count,
            BasketPlanner.Of(Shelf.Empty, asked.Concat(asked), Garage.Day(0), 0.8) is var basket
                ? basket.Lines.Count + basket.Unnumbered.Count
                : 0);
    }

    /// <summary>Spares may be missing at the refit; what broke already may not.</summary>
    [Fact]
    public void What_broke_in_a_try_is_needed_whatever_spares_are_advised()
    {
        var history = SmallCar.After(new StepDone(Fact.Open("wheel-axle"), null, null),
            new Tried(new("wheel-axle", "pry", JointCondition.SnappedFlush, false, null)));
        history = history with
        {
            Car = history.Car with
            {
                Structure = history.Car.Structure with
                {
                    Joints = history.Car.Structure.Joints
                        .Select(joint => joint.Id == "wheel-axle"
                            ? joint with { Kind = JointKind.Clip, SingleUse = false, Count = 8 }
                            : joint).ToValueList()
                }
            }
        };
        var nothing = Plan.Nothing;
        var need = Assert.Single(PlanNeeds.Of(history, Shelf.Empty, nothing, [], null), one => one.Thing == "joint wheel-axle");
        Assert.Equal((4, NeedReason.Destroyed), (need.Count, need.Reason));
    }

    [Fact]
    public void A_verdict_to_replace_asks_for_the_part_until_one_is_fitted()
    {
        var garage = new Garage("bench").Opened();
        var nothing = Plan.Nothing;
        ValueList<Need> Needs() => PlanNeeds.Of(Garage.Histories(garage.Known)[0], garage.Shelf(), nothing, [], null);
        garage.Write(Garage.Estate, new NumberAssigned("part damper", "DAMPER", 1));
        Assert.Empty(Needs());
        garage.Write(Garage.Estate, new VerdictGiven(new("damper", VerdictKind.Replace, DoneBy.Self, null)));
        Assert.Equal(("part damper", "DAMPER", 1), Needs().Select(need => (need.Thing, need.Number!, need.Count)).Single());
        garage.Write(Garage.Estate,
            new PiecesMoved(new("DAMPER"), 1, StockPlace.Shelf, StockPlace.On(Garage.Estate, "part damper"), null, null));
        Assert.Empty(Needs());
    }

    [Fact]
    public void What_is_asked_for_by_word_is_needed_until_as_many_went_on_afterwards()
    {
        var garage = new Garage("bench").Opened();
        var nothing = Plan.Nothing;
        IEnumerable<(string, int)> Needs() =>
            PlanNeeds.Of(Garage.Histories(garage.Known)[0], garage.Shelf(), nothing, [], null).Select(need => (need.Thing, need.Count));
        void Fit() =>
            garage.Write(Garage.Estate,
                new PiecesMoved(new("DAMPER"), 1, StockPlace.Shelf, StockPlace.On(Garage.Estate, "part damper"), null, null));
        garage.Write(Garage.Estate, new NumberAssigned("part damper", "DAMPER", 1));

        // The one that is on the car is the worn one: it serves nothing.
        Fit();
        garage.Write(Garage.Estate, new PiecesWanted("part damper", 2));
        Assert.Equal([("part damper", 2)], Needs());
        Fit();
        Assert.Equal([("part damper", 1)], Needs());

        // A verdict at the same place counts no piece twice.
        garage.Write(Garage.Estate, new VerdictGiven(new("damper", VerdictKind.Replace, DoneBy.Self, null)));
        Assert.Equal([("part damper", 1)], Needs());
        Fit();
        Assert.Empty(Needs());
        garage.Write(Garage.Estate, new PiecesWanted("part ghost", 2));
        Assert.Empty(Needs());
    }

    /// <summary>Two days and a half are three: half a day too late is too late.</summary>
    [Fact]
    public void Days_until_a_part_is_here_are_whole_whoever_asks_for_it()
    {
        var estimate = new PartEstimated(new("damper", null, null, null, null, null, 2.5m, null, null, null));
        int? Days(Happening asked) =>
            Assert.Single(PlanNeeds.Of(SmallCar.After(estimate, asked), Shelf.Empty, Plan.Nothing, [], null)).LeadDays;
        Assert.Equal(3, Days(new VerdictGiven(new("damper", VerdictKind.Replace, DoneBy.Self, null))));
        Assert.Equal(3, Days(new PiecesWanted("part damper", 2)));
    }

    [Fact]
    public void What_was_asked_for_by_word_goes_with_its_part_and_does_not_come_back_with_it()
    {
        var part = SmallCar.Structure.Parts.Single(one => one.Id == "damper");
        var joints = SmallCar.Structure.Joints.Where(joint => joint.Holds.Contains("damper")).ToValueList();
        var gone = new[] { "part damper" }.Concat(joints.Select(joint => $"joint {joint.Id}")).ToValueList();
        var history = SmallCar.After(new PiecesWanted("part damper", 2), new StructureRemoved(gone),
            new StructureAdded("edit", new() { Parts = [part], Joints = joints }, []));
        Assert.Contains(history.Car.Structure.Parts, one => one.Id == "damper");
        Assert.Empty(history.Car.Wants);
    }

    /// <summary>Binomial quantiles for a ratio of 30 to 31 worked out by an independent script from the formula:
    /// 2 of 4, 4 of 8 with a chance of 0.2 each. 6 of 12 with 0.35 at a ratio of 0.8: the spares example of the reference tables.</summary>
    [Theory]
    [InlineData(4, 0.2, 30, 1, 2)]
    [InlineData(8, 0.2, 30, 1, 4)]
    [InlineData(12, 0.35, 12, 3, 6)]
    public void Spares_weigh_a_missing_clip_against_one_too_many(int pieces, double chance, int short_, int over, int spares)
    {
        var joint = new Joint { Id = "clips", Kind = JointKind.Clip, Holds = ["a", "b"], Ways = [], Count = pieces };
        var shelf = new Shelf { Lists = [new("Harbour Rubber", "CHF", Garage.Day(0), [new("CLIP", "", new(over))])] } with
        { Numbers = [new() { Id = "CLIP", Breaks = (decimal)chance, Origin = Origin.User }] };
        var advice = Spares.For(shelf, joint, "CLIP", pieces,
            new() { Id = "car", Name = "Car", Currency = "CHF", Settings = Settings.Standard with { PerHour = new(short_) } });
        Assert.Equal(spares, advice.Count);
        Assert.Contains("your judgement", advice.Says, StringComparison.Ordinal);
        Assert.EndsWith(".00 CHF", advice.Says, StringComparison.Ordinal);
        Assert.Equal(0, Spares.For(shelf, joint with { Kind = JointKind.Bolt }, null, pieces, new() { Id = "car", Name = "Car" }).Count);
    }

    [Fact]
    public void What_may_still_go_back_is_to_be_tried_on_in_time()
    {
        var garage = new Garage("bench").Opened();
        garage.Write(Garage.Estate, new NumberAssigned("part damper", "DAMPER", 1));
        var order = garage.Write(Garage.Estate, new Ordered("Harbour Rubber", [new("DAMPER", 2)], Garage.Day(0), null, 30, null));
        garage.Write(Garage.Estate, new Arrived(order, [new("DAMPER", new("DAMPER"), 2)], Garage.Day(5)));
        ValueList<TrialFit> Fits(int day) =>
            TrialFits.Of(garage.Shelf(), Garage.Histories(garage.Known).Select(history => history.Car), Garage.Day(day));
        var fit = Assert.Single(Fits(10));
        Assert.Equal((2, Garage.Day(35)), (fit.Count, fit.By));
        Assert.Equal(["estate part damper"], fit.Things);
        garage.Write(Garage.Estate, new TrialFitted(order, "DAMPER", 1, true, null, Garage.Day(11)));
        Assert.Equal(1, Assert.Single(Fits(12)).Count);
        garage.Do(Garage.Estate, ShelfWork.Fitted(garage.Shelf(), "DAMPER", 2, 0, (Garage.Estate, "part damper"), Garage.Day(13)));
        Assert.Empty(Fits(14));
        Assert.Empty(Fits(40));
    }

    [Fact]
    public void What_came_in_two_parts_is_tried_on_once_each()
    {
        var garage = new Garage("bench").Opened();
        var order = garage.Write(Garage.Estate, new Ordered("Harbour Rubber", [new("DAMPER", 2)], Garage.Day(0), null, 30, null));
        garage.Write(Garage.Estate, new Arrived(order, [new("DAMPER", new("DAMPER"), 1)], Garage.Day(5)));
        garage.Write(Garage.Estate, new Arrived(order, [new("DAMPER", new("DAMPER"), 1)], Garage.Day(7)));
        garage.Write(Garage.Estate, new TrialFitted(order, "DAMPER", 1, true, null, Garage.Day(8)));
        var fit = Assert.Single(TrialFits.Of(garage.Shelf(), [], Garage.Day(9)));
        Assert.Equal((1, Garage.Day(37)), (fit.Count, fit.By));
    }

    [Fact]
    public void What_did_not_fit_and_went_back_leaves_the_others_to_be_tried_on()
    {
        var garage = new Garage("bench").Opened();
        var order = garage.Write(Garage.Estate, new Ordered("Harbour Rubber", [new("DAMPER", 2)], Garage.Day(0), null, 30, null));
        garage.Write(Garage.Estate, new Arrived(order, [new("DAMPER", new("DAMPER"), 2)], Garage.Day(5)));
        garage.Write(Garage.Estate, new TrialFitted(order, "DAMPER", 1, false, null, Garage.Day(8)));
        garage.Write(Garage.Estate, new SentBack(order, [new("DAMPER", new("DAMPER"), 1)], Garage.Day(9), null));
        Assert.Equal(1, Assert.Single(TrialFits.Of(garage.Shelf(), [], Garage.Day(10))).Count);
    }

    [Fact]
    public void A_kit_that_nobody_is_known_to_sell_is_no_cheaper_than_a_piece_with_a_price()
    {
        var shelf = Sold(new Offer("SEAL", "Seal", new(2))) with { Numbers = [new() { Id = "KIT", Contains = [new("SEAL", 1)] }] };
        Assert.Equal("SEAL", Assert.Single(BasketPlanner.Of(shelf, [Need("SEAL", 1, null)], Garage.Day(0), 0.8).Purchases).Number);
    }

    [Fact]
    public void A_kit_that_is_the_only_source_is_bought_though_nobody_is_known_to_sell_it()
    {
        var shelf = new Shelf { Numbers = [new() { Id = "KIT", Contains = [new("SEAL", 1)] }, new() { Id = "SEAL", KitOnly = true }] };
        Assert.Equal("KIT", Assert.Single(BasketPlanner.Of(shelf, [Need("SEAL", 1, null)], Garage.Day(0), 0.8).Purchases).Number);
    }

    [Fact]
    public void Kits_of_two_batches_that_nobody_needs_whole_are_both_opened_but_for_those_that_somebody_does()
    {
        var shelf = new Shelf
        {
            Numbers = [new() { Id = "KIT", Contains = [new("SEAL", 1)] }],
            Holdings = [new(new("KIT"), 1), new(new("KIT", PieceCondition.Used), 1)],
        };
        var whole = Need("KIT", 1, null) with { Thing = "part axle" };
        Assert.Empty(BasketPlanner.Of(shelf, [Need("SEAL", 1, null), whole], Garage.Day(0), 0.8).Purchases);
    }

    [Fact]
    public void Prices_in_two_currencies_are_not_added_up()
    {
        var shelf = Sold(new Offer("SEAL", "Seal", new(2)));
        shelf = shelf with { Lists = [.. shelf.Lists, new("Fen Fasteners", "GBP", Garage.Day(0), [new("NUT", "Nut", new(3))])] };
        var basket = BasketPlanner.Of(shelf, [Need("SEAL", 2, null), Need("NUT", 1, null) with { Thing = "part axle" }], Garage.Day(0),
            0.8);
        Assert.Equal([new CurrencyCost("EUR", new(4)), new("GBP", new(3))], basket.Costs);
    }

    /// <summary>One pound is not less than two euros, nor are they three of anything.</summary>
    [Fact]
    public void A_price_in_the_cars_own_currency_goes_before_a_number_that_is_lower_in_another()
    {
        var shelf = Sold(new Offer("SEAL", "Seal", new(2)));
        shelf = shelf with
        {
            Lists = [new("Fen Fasteners", "GBP", Garage.Day(0), [new("SEAL", "Seal", new(1)), new("NUT", "Nut", new(3), LeadDays: 5)]),
                .. shelf.Lists]
        };
        var bought = BasketPlanner.Of(shelf, [Need("SEAL", 1, null), Need("NUT", 1, null) with { Thing = "part axle" }], Garage.Day(0),
            0.8).Purchases.ToDictionary(one => one.Number);
        Assert.Equal(("Harbour Rubber", "EUR", new Money(2)), (bought["SEAL"].Supplier, bought["SEAL"].Currency, bought["SEAL"].Cost));
        Assert.DoesNotContain("GBP", bought["SEAL"].Says, StringComparison.Ordinal);
        Assert.Equal(("Fen Fasteners", "GBP", new Money(3)), (bought["NUT"].Supplier, bought["NUT"].Currency, bought["NUT"].Cost));
        Assert.EndsWith("priced in GBP, so not compared with prices in EUR", bought["NUT"].Says, StringComparison.Ordinal);
        Assert.Equal("Fen Fasteners",
            Assert.Single(
                BasketPlanner.Of(shelf, [Need("SEAL", 1, null) with { Currency = "GBP" }], Garage.Day(0), 0.8).Purchases).Supplier);
    }

    [Fact]
    public void A_kit_in_another_currency_is_not_weighed_against_pieces_in_the_cars_own()
    {
        var shelf = Sold(new Offer("SEAL", "Seal", new(2))) with
        { Numbers = [new() { Id = "KIT", Contains = [new("SEAL", 2), new("NUT", 1)] }, new() { Id = "NUT", KitOnly = true }] };
        shelf = shelf with { Lists = [.. shelf.Lists, new("Fen Fasteners", "GBP", Garage.Day(0), [new("KIT", "Kit", new(1))])] };
        ValueList<(string, int)> Bought(params Need[] needs) =>
            BasketPlanner.Of(shelf, needs, Garage.Day(0), 0.8).Purchases.Select(one => (one.Number, one.Count)).ToValueList();
        Assert.Equal([("SEAL", 4)], Bought(Need("SEAL", 4, null)));
        Assert.Equal([("KIT", 1), ("SEAL", 2)], Bought(Need("SEAL", 4, null), Need("NUT", 1, null) with { Thing = "part axle" }));
    }

    [Fact]
    public void A_spare_is_weighed_by_its_price_in_the_cars_own_currency()
    {
        var shelf = Sold(new Offer("CLIP", "", new(2)));
        shelf = shelf with { Lists = [new("Fen Fasteners", "GBP", Garage.Day(0), [new("CLIP", "", new(1))]), .. shelf.Lists] };
        Assert.Equal(new Money(2), Spares.PriceOf(shelf, "CLIP", "EUR"));
        Assert.Null(Spares.PriceOf(shelf, "CLIP", "CHF"));
    }

    [Fact]
    public void A_need_is_counted_in_the_currency_of_its_car()
    {
        var history = SmallCar.After(new CarOpened("Heron", 1988, "GBP"), new PiecesWanted("part damper", 1));
        Assert.Equal("GBP", Assert.Single(PlanNeeds.Of(history, Shelf.Empty, Plan.Nothing, [], null)).Currency);
    }

    [Fact]
    public void A_kit_is_for_each_place_that_it_covers()
    {
        var shelf = Sold(new Offer("KIT", "Kit", new(2)), new Offer("SEAL", "Seal", new(2)), new Offer("NUT", "Nut", new(2))) with
        { Numbers = [new() { Id = "KIT", Contains = [new("SEAL", 1), new("NUT", 1)] }] };
        var purchase = Assert.Single(BasketPlanner.Of(shelf, [Need("SEAL", 1, null), Need("NUT", 1, null) with { Thing = "part axle" }],
            Garage.Day(0), 0.8).Purchases);
        Assert.Equal(["estate part axle", "estate part damper"], purchase.For);
    }

    private static Need Need(string number, int count, DateOnly? by) =>
        new("estate", "part damper", number, "", count, by, NeedReason.Asked, null, "");

    private static Shelf Sold(params Offer[] offers) => new() { Lists = [new("Harbour Rubber", "EUR", Garage.Day(0), [.. offers])] };
}
