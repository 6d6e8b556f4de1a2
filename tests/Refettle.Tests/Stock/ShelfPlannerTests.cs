using NodaTime;
using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Logbook;
using Refettle.Stock;
using Refettle.Stock.Baskets;
using Refettle.Timeline;
using Refettle.Timeline.Network;
using Refettle.Timeline.Scheduling;

namespace Refettle.Tests.Stock;

/// <summary>A replaced damper: the timeline waits for it, and it is ordered for the day on which it goes on.</summary>
public sealed class ShelfPlannerTests
{
    private static readonly AccessPlanner Planner = new(new ReducedSolver());

    // A Sunday, as day 0 of the garage; in the garage every evening from 18:00 to 21:00.
    private static readonly Instant Now = Instant.FromUtc(2026, 3, 1, 8, 0);

    private static readonly Spell Evenings = new()
    { Id = "evenings", First = new(2026, 3, 1), From = new(18, 0), Until = new(21, 0), Repeats = new(Rhythm.Daily, 1, []) };

    [Fact]
    public void What_is_in_hand_holds_nothing_up()
    {
        var garage = Opened();
        garage.Write(Garage.Estate, new PiecesMoved(new("DAMPER"), 1, StockPlace.Counting, StockPlace.Shelf, Garage.Day(0), null));
        var supplied = Supplied(garage);
        Assert.DoesNotContain(supplied.Works[0].Network!.Tasks, task => task.Delivery is not null);
        Assert.Equal("1 × DAMPER: 1 in hand", Fit(supplied).Parts.Single().Says);
        Assert.Empty(supplied.Basket.Purchases);
        Assert.Equal(Garage.Day(0), FitDay(supplied));
    }

    /// <summary>Ten days promised: of an unknown supplier four in five take up to 1.5445 times as long
    /// (<see cref="SupplierRecordTests"/>), so it is counted on 16 days after the order, and fitted that evening.</summary>
    [Fact]
    public void What_is_ordered_is_waited_for_from_its_order_on()
    {
        var garage = Opened();
        garage.Write(Garage.Estate, new Ordered("Harbour Rubber", [new("DAMPER", 1)], Garage.Day(-2), Garage.Day(8), null, null));
        var supplied = Supplied(garage);
        var wait = Assert.Single(supplied.Works[0].Network!.Tasks, task => task.Delivery is not null);
        Assert.Equal("wait.delivery.harbour-rubber.2026-02-27", wait.Id);
        Assert.Contains("promised Mon 2026-03-09, counted on for Sun 2026-03-15", wait.Says, StringComparison.Ordinal);
        Assert.DoesNotContain(supplied.Works[0].Network!.Tasks, task => task.Kind == TaskKind.Order);
        Assert.Equal(Garage.Day(14), FitDay(supplied));
        Assert.Empty(supplied.Basket.Purchases);
    }

    /// <summary>Named 10 days, counted on in 16: ordered at 18:00 on day 0, it is here at 18:13 on day 16. That day
    /// the step takes it, and by that day less 16 the basket says to order it.</summary>
    [Fact]
    public void What_is_not_ordered_is_ordered_first_and_by_the_day_of_its_step()
    {
        var garage = Opened();
        garage.Write(Garage.Estate,
            new OffersListed("Harbour Rubber", "EUR", [new("DAMPER", "Damper", new(40), 1, 1, 10)], Garage.Day(-9)));
        var supplied = Supplied(garage);
        Assert.Equal(["order.harbour-rubber"],
            supplied.Works[0].Network!.Tasks.Where(task => task.Kind == TaskKind.Order).Select(task => task.Id));
        Assert.Equal(Garage.Day(16), FitDay(supplied));
        var purchase = Assert.Single(supplied.Basket.Purchases);
        Assert.Equal((Garage.Day(16), Garage.Day(0), 0), (purchase.NeededBy, purchase.OrderBy, purchase.DaysTooLate));
    }

    /// <summary>One damper on the shelf, two cars: the estate's goes on first, so it has it; the saloon, whose owner is
    /// there only from day 20 on, orders.</summary>
    [Fact]
    public void The_piece_goes_to_the_car_that_needs_it_first_and_is_given_once()
    {
        var garage = Opened();
        Replaced(garage, Garage.Saloon, Evenings with { First = new(2026, 3, 21) });
        garage.Write(Garage.Saloon, new PiecesMoved(new("DAMPER"), 1, StockPlace.Counting, StockPlace.Shelf, Garage.Day(0), null));
        var supplied = Supplied(garage);
        Assert.DoesNotContain(supplied.Works[0].Network!.Tasks, task => task.Delivery is not null);
        Assert.Equal("1 × DAMPER: 1 not ordered yet", Fit(supplied, 1).Parts.Single().Says);
        Assert.Equal(["saloon part damper"], Assert.Single(supplied.Basket.Purchases).For);
        Assert.Equal(1, supplied.Basket.Lines.Sum(line => line.Given.Sum(given => given.Count)));
    }

    /// <summary>It is at a shop: nobody sends it out again, and it goes on when it is back. 10 days promised, half
    /// of all shops take a third more.</summary>
    [Fact]
    public void What_is_at_a_shop_is_waited_for_and_looked_over()
    {
        var garage = new Garage("bench").Opened();
        garage.Write(Garage.Estate, new SpellAdded(Evenings));
        garage.Write(Garage.Estate, new VerdictGiven(new("damper", VerdictKind.Refurbish, DoneBy.OutsideShop, null)));
        garage.Write(Garage.Estate,
            new SentOut("Tidewater Plating", "zinc", [new("part damper", 1, null, [])], Garage.Day(-5), Garage.Day(5), null));
        var supplied = Supplied(garage);
        var tasks = supplied.Works[0].Network!.Tasks.Select(task => task.Id).ToList();
        Assert.Contains("wait.shop.damper", tasks);
        Assert.Contains("return.damper", tasks);
        Assert.DoesNotContain("send.damper", tasks);
        Assert.Equal(Garage.Day(9), FitDay(supplied));
    }

    /// <summary>Arrived on day -20, taken back within 30 days: the last evening is that of day 10. It is held up to
    /// the car while the old one is off.</summary>
    [Fact]
    public void A_trial_fit_is_done_while_it_can_still_go_back()
    {
        var answer = Timeline(Returnable(Garage.Day(-20)));
        var trial = answer.Tasks.Single(task => task.Task.Kind == TaskKind.TrialFit);
        Assert.Equal("trial-fit.damper.2026-03-11", trial.Task.Id);
        Assert.True(trial.Finish <= new LocalDateTime(2026, 3, 12, 0, 0));
        Assert.True(trial.Start >= answer.Tasks
            .Single(task => task.Task.Steps.Any(step => step.Fact == Fact.Off("damper")) && task.Task.Kind == TaskKind.Strip).Finish);
        Assert.Empty(answer.Clashes);
    }

    /// <summary>Until tomorrow, but in the garage from day 5 on only: the timeline stands, and says that it comes too late. After
    /// its last day there is no task.</summary>
    [Fact]
    public void A_trial_fit_that_comes_too_late_is_told()
    {
        var garage = Returnable(Garage.Day(-29));
        Assert.Contains(Timeline(garage).Tasks, task => task.Task.Kind == TaskKind.TrialFit);
        garage.Write(Garage.Estate, new SpellAdded(Evenings with { First = new(2026, 3, 6) }));
        var answer = Timeline(garage);
        Assert.NotEmpty(answer.Tasks);
        Assert.Contains(answer.Clashes, clash => clash.Contains("after Tue 2026-03-03 00:00", StringComparison.Ordinal));
        Assert.DoesNotContain(Timeline(Returnable(Garage.Day(-31))).Tasks, task => task.Task.Kind == TaskKind.TrialFit);
    }

    /// <summary>3.5 m², 80 µm, 55 % solids by volume, 40 % loss: 0.848 L (volume balance, as on paint makers' sheets): four packs of a
    /// quarter of a litre, three of 0.3 L. One is on the shelf.</summary>
    [Theory]
    [InlineData(0.25, 4)]
    [InlineData(0.3, 3)]
    [InlineData(2.0, 1)]
    [InlineData(null, 1)]
    public void Paint_is_bought_by_its_litres_in_whole_packs_less_what_is_on_the_shelf(double? pack, int packs)
    {
        var garage = new Garage("bench").Opened();
        var epoxy = Coating.Coatings.Epoxy with
        {
            Figures = [.. Coating.Coatings.Epoxy.Figures,
                .. pack is { } litres ? new[] { new SheetFigure(FigureKind.Pack, (decimal)litres, Origin.User) } : []]
        };
        foreach (var happening in Coating.Coatings.Described)
            garage.Write(Garage.Estate, happening is ProductDescribed { Product.Id: "epoxy" } ? new ProductDescribed(epoxy) : happening);
        garage.Write(Garage.Estate, new NumberDescribed(new() { Id = "EP-1", Name = "Epoxy" }, []));
        garage.Write(Garage.Estate, new PiecesMoved(new("EP-1"), 1, StockPlace.Counting, StockPlace.Shelf, null, null));
        var line = Supplied(garage).Basket.Lines.Single(one => one.Need.Thing == "coat epoxy");
        Assert.Equal((packs, packs - 1), (line.Need.Count, line.Missing));
        Assert.Contains("0.85 L unthinned", line.Need.Says, StringComparison.Ordinal);
        Assert.Equal(pack is null, line.Need.Says.Contains("what is in one is not entered", StringComparison.Ordinal));
    }

    private static Garage Returnable(DateOnly came)
    {
        var garage = Opened();
        var order = garage.Write(Garage.Estate, new Ordered("Harbour Rubber", [new("DAMPER", 1)], Garage.Day(-40), null, 30, null));
        garage.Write(Garage.Estate, new Arrived(order, [new("DAMPER", new("DAMPER"), 1)], came));
        return garage;
    }

    private static TimelineAnswer Timeline(Garage garage)
    {
        var answer = new TimelinePlanner(new FirstScheduler()).Of(Supplied(garage).Works[0].Ask(Now), new(TimeSpan.FromSeconds(5))).Value;
        Assert.DoesNotContain(answer.Notes, note => note.Severity == Severity.Error);
        return answer;
    }

    private static Garage Opened()
    {
        var garage = new Garage("bench").Opened();
        Replaced(garage, Garage.Estate, Evenings);
        return garage;
    }

    private static void Replaced(Garage garage, string car, Spell spell)
    {
        garage.Write(car, new SpellAdded(spell));
        garage.Write(car, new NumberAssigned("part damper", "DAMPER", 1));
        garage.Write(car, new VerdictGiven(new("damper", VerdictKind.Replace, DoneBy.Self, null)));
    }

    private static SuppliedCars Supplied(Garage garage)
    {
        var cars = Garage.Histories(garage.Known).Select(history => history.Car.Verdicts.Count == 0 ? PlannedCar.Of(history, null)
            : new(history, TimelineWork.Of(history.Car, [Fact.Off("damper")], new([]), Planner).Value, [])).ToValueList();
        return ShelfPlanner.Of(garage.Shelf(), cars, Now, Garage.Day(0));
    }

    private static WorkTask Fit(SuppliedCars supplied, int car = 0) =>
        supplied.Works[car].Network!.Tasks
            .Single(task => task.Kind == TaskKind.Refit && task.Steps.Any(step => step.Fact == Fact.Off("damper")));

    private static DateOnly FitDay(SuppliedCars supplied)
    {
        var answer = new TimelinePlanner(new FirstScheduler()).Of(supplied.Works[0].Ask(Now), new(TimeSpan.FromSeconds(5))).Value;
        Assert.DoesNotContain(answer.Notes, note => note.Severity == Severity.Error);
        return answer.Tasks.Single(task => task.Task.Id == Fit(supplied).Id).Start.Date.ToDateOnly();
    }
}
