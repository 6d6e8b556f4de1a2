using NodaTime;
using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Logbook;
using Refettle.Stock;
using Refettle.Stock.Baskets;
using Refettle.Stuck;
using Refettle.Timeline;
using Refettle.Timeline.Network;

namespace Refettle.Tests.Stock;

/// <summary>A nut that held and may have to be split: the two new ones that its joint takes are netted against the shelf.
/// That what a try destroys is in hand before it is common practice, no source.</summary>
public sealed class TriesAtTheShelfTests
{
    private const string Joint = "joint damper-body";

    private static readonly AccessPlanner Planner = new(new ReducedSolver());

    private static readonly Instant Now = Instant.FromUtc(2026, 3, 1, 8, 0);

    [Fact]
    public void What_a_try_destroys_is_not_ordered_while_it_is_on_the_shelf()
    {
        var supplied = Supplied(Garage(onShelf: 2, Estate()));
        Assert.Equal("2 × B-10: 2 in hand", Try(supplied).Parts.Single().Says);
        Assert.DoesNotContain(supplied.Works[0].Network!.Tasks, task => task.Kind == TaskKind.Order || task.Delivery is not null);
        Assert.Empty(supplied.Basket.Purchases);
    }

    [Fact]
    public void What_is_short_is_ordered_and_the_try_waits_for_it()
    {
        var supplied = Supplied(Garage(onShelf: 1, Estate()));
        var wait = Assert.Single(supplied.Works[0].Network!.Tasks, task => task.Delivery is not null);
        Assert.Contains(supplied.Works[0].Network!.Links, link => link.Before == wait.Id && link.After == Try(supplied).Id);
        Assert.Equal(1, Assert.Single(supplied.Basket.Purchases).Needed);
        Assert.DoesNotContain(supplied.Works[0].Network!.Tasks, task => task.Id == "order.damper-body");
    }

    [Fact]
    public void What_nobody_knows_by_its_word_is_ordered_by_it()
    {
        var supplied = Supplied(Garage(onShelf: 2, Estate()), "the lesser part");
        Assert.Contains(supplied.Works[0].Network!.Tasks,
            task => task.Id == "order.damper-body" && task.Says.Contains("the lesser part", StringComparison.Ordinal));
        Assert.Contains(supplied.Works[0].Network!.Links,
            link => link.Before == "wait.delivery.damper-body" && link.After == Try(supplied).Id);
    }

    /// <summary>Conservation: of two cars that need two each, what is given and what is missing make four, nothing is given twice
    /// or bought twice, and just those tries wait whose pieces are missing.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(6)]
    public void Pieces_of_two_cars_are_given_once(int onShelf)
    {
        var garage = Garage(onShelf, Estate(), Saloon());
        var supplied = Supplied(garage);
        var lines = supplied.Basket.Lines.Where(line => line.Need.Thing == Joint).ToList();
        Assert.Equal(["2 B-10", "2 B-10"], lines.Select(line => $"{line.Need.Count} {line.Need.Number}"));
        Assert.Equal(Math.Min(onShelf, 4), lines.Sum(line => line.Given.Sum(given => given.Count)));
        Assert.Equal(Math.Max(0, 4 - onShelf), lines.Sum(line => line.Missing));
        Assert.Equal(Math.Max(0, 4 - onShelf), supplied.Basket.Purchases.Sum(purchase => purchase.Needed));
        Assert.Empty(BasketCheck.Of(garage.Shelf(), supplied.Basket));
        Assert.Equal(lines.Count(line => line.Missing > 0),
            supplied.Works.Count(work => work.Network!.Tasks.Any(task => task.Delivery is not null)));
    }

    private static string Estate() => Stock.Garage.Estate;

    private static string Saloon() => Stock.Garage.Saloon;

    private static WorkTask Try(SuppliedCars supplied) => supplied.Works[0].Network!.Tasks.Single(task => task.Kind == TaskKind.Try);

    private static Garage Garage(int onShelf, params string[] cars)
    {
        var garage = new Garage("bench").Opened();
        foreach (var car in cars)
        {
            garage.Write(car, new NumberAssigned(Joint, "B-10", 2));
            garage.Write(car, new Tried(new("damper-body", "turn", null, false, null)));
        }

        if (onShelf > 0)
            garage.Write(Estate(), new PiecesMoved(new("B-10"), onShelf, StockPlace.Counting, StockPlace.Shelf, Stock.Garage.Day(0), null));
        return garage;
    }

    /// <param name="destroys">What the last, sure try destroys.</param>
    private static SuppliedCars Supplied(Garage garage, string destroys = TryPlaces.AnyFastener)
    {
        ValueList<Rung> rungs =
        [
            new() { Id = "turn", Says = "Turn", Takes = new(5), Odds = [0.9, 0.7, 0.5, 0.2, 0.1] },
            new() { Id = "split", Says = "Split", Tool = "nut splitter", Takes = new(20), Odds = [1, 1, 1, 1, 1], Destroys = [destroys] },
        ];
        LadderSet ladders = new([new() { Id = "threaded", Name = "Threaded", Rungs = rungs, Origin = "made up" }]);
        var cars = Stock.Garage.Histories(garage.Known).Select(history => history.Car.Tries.Count == 0 ? PlannedCar.Of(history, null)
            : new(history, TimelineWork.Of(history.Car, [Fact.Open("damper-body")], ladders, Planner).Value, [])).ToValueList();
        return ShelfPlanner.Of(garage.Shelf(), cars, Now, Stock.Garage.Day(0));
    }
}
