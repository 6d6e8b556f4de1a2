using Refettle.CloseUp.Refit;
using Refettle.Logbook;
using Refettle.Tests.Logbook;
using Refettle.Tests.Stock;

namespace Refettle.Tests.CloseUp;

/// <summary>What is told of the shelf adds up by counting (the numbers of pieces are their own check); that single-use fasteners are
/// renewed is common practice, no source.</summary>
public sealed class RefitFastenersTests
{
    private static readonly Joint Bolts = SmallCar.Structure.Joints.First(joint => joint.Id == "tank-body") with
    { SingleUse = true, Count = 2, Torque = new(48) };

    [Fact]
    public void What_is_in_hand_to_come_and_missing_is_told_at_the_step()
    {
        var garage = Opened(Garage.Estate);
        Assert.Equal("New: 2 × M10-BOLT: 2 missing", Step(garage).Says);
        garage.Write(Garage.Estate, new Ordered("Harbour Rubber", [new("M10-BOLT", 1)], Garage.Day(-2), Garage.Day(8), null, null));
        Assert.Equal((0, 1, 1), (Step(garage).InHand, Step(garage).ToCome, Step(garage).Missing));
        Count(garage, 1);
        Assert.Equal((1, 1, 0), (Step(garage).InHand, Step(garage).ToCome, Step(garage).Missing));
        Count(garage, 1);
        Assert.Equal("New: 2 × M10-BOLT: 2 in hand", Step(garage).Says);
    }

    [Fact]
    public void Keeping_them_is_one_entry_after_which_another_car_cannot_have_them()
    {
        var garage = Opened(Garage.Estate, Garage.Saloon);
        Count(garage, 2);
        Assert.Equal(2, Step(garage).InHand + Step(garage, Garage.Saloon).InHand);
        var needy = Step(garage).InHand == 0 ? Garage.Saloon : Garage.Estate;
        garage.Write(needy, Step(garage, needy).Keeps!);
        Assert.Equal("New: 2 × M10-BOLT: 2 in hand, kept for it", Step(garage, needy).Says);
        Assert.Null(Step(garage, needy).Keeps);
        var other = needy == Garage.Estate ? Garage.Saloon : Garage.Estate;
        Assert.Equal((0, 2), (Step(garage, other).InHand, Step(garage, other).Missing));
    }

    [Fact]
    public void No_piece_is_told_twice_however_few_there_are()
    {
        for (var count = 0; count <= 5; count++)
        {
            var garage = Opened(Garage.Estate, Garage.Saloon);
            if (count > 0)
                Count(garage, count);
            var steps = new[] { Step(garage), Step(garage, Garage.Saloon) };
            Assert.Equal(Math.Min(count, 4), steps.Sum(step => step.InHand));
            Assert.All(steps, step => Assert.Equal(step.Count, step.InHand + step.ToCome + step.Missing));
        }
    }

    private static Garage Opened(params string[] cars)
    {
        var garage = new Garage("bench").Opened();
        foreach (var car in cars)
        {
            garage.Write(car, new StructureAdded("edit", new() { Joints = [Bolts] }, []));
            garage.Write(car, new NumberAssigned("joint tank-body", "M10-BOLT", 2));
            garage.Write(car, new StepDone(Fact.Open("tank-body"), null, null));
        }

        return garage;
    }

    private static void Count(Garage garage, int more) =>
        garage.Write(Garage.Estate, new PiecesMoved(new("M10-BOLT"), more, StockPlace.Counting, StockPlace.Shelf, Garage.Day(0), null));

    private static StepFasteners Step(Garage garage, string car = Garage.Estate)
    {
        var histories = Garage.Histories(garage.Known);
        var history = histories.Single(one => one.Car.Id == car);
        var sheet = RefitPlanner.Of(history);
        var told = Assert.Single(RefitFasteners.Of(history.Car, sheet, histories, Garage.Day(0)));
        Assert.Equal(Fact.Open("tank-body"), sheet.Steps[told.Step].Fact);
        return told;
    }
}
