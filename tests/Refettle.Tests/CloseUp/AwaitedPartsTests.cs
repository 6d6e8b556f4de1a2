using Refettle.CloseUp;
using Refettle.CloseUp.Refit;
using Refettle.Logbook;
using Refettle.Tests.Logbook;
using Refettle.Tests.Stock;

namespace Refettle.Tests.CloseUp;

/// <summary>What is not here is told where it is needed and at the end; the log of orders and shops is its own check.</summary>
public sealed class AwaitedPartsTests
{
    private readonly Garage _garage = Apart();

    [Fact]
    public void A_part_at_a_shop_is_told_at_its_step_and_before_the_road_until_it_is_back()
    {
        Assert.Empty(Told());
        Assert.Empty(Absent());
        var sent = _garage.Write(Garage.Estate,
            new SentOut("Plater", "zinc", [new("part tank", 1, null, [])], Garage.Day(-3), Garage.Day(9), null));
        var told = Assert.Single(Told());
        Assert.Equal(["tank"], Absent());
        Assert.Equal(Fact.Off("tank"), Sheet().Steps[told.Step!.Value].Fact);
        Assert.StartsWith("At Plater: tank, zinc; promised Tue 2026-03-10, counted on for ", told.Says, StringComparison.Ordinal);
        Assert.Equal($"off the car; {told.Says}", Block("part tank").Why);
        _garage.Write(Garage.Estate, new CameBack(sent, [new("part tank", 1, null, "bright", true)], Garage.Day(0)));
        Assert.Empty(Told());
        Assert.Equal("off the car", Block("part tank").Why);
    }

    [Fact]
    public void A_new_part_is_told_as_ordered_or_not_until_it_lies_on_the_shelf()
    {
        _garage.Write(Garage.Estate, new VerdictGiven(new("tank", VerdictKind.Replace, DoneBy.Self, null)));
        _garage.Write(Garage.Estate, new NumberAssigned("part tank", "77-1", 1));
        Assert.Equal("New: 1 × 77-1: 1 not ordered yet", Assert.Single(Told()).Says);
        Assert.Equal(["tank"], Absent());
        _garage.Write(Garage.Estate, new Ordered("Harbour Rubber", [new("77-1", 1)], Garage.Day(-2), Garage.Day(8), null, null));
        Assert.StartsWith("New: 1 × 77-1: 1 ordered from Harbour Rubber, to come about ", Assert.Single(Told()).Says,
            StringComparison.Ordinal);
        Assert.Contains("Harbour Rubber", Block("part tank").Why, StringComparison.Ordinal);
        _garage.Write(Garage.Estate, new PiecesMoved(new("77-1"), 1, StockPlace.Counting, StockPlace.Shelf, Garage.Day(0), null));
        Assert.Empty(Told());
    }

    /// <summary>A bag of bolts belongs to no step: it is told at the end, and stands between the car and the road.</summary>
    [Fact]
    public void What_left_by_its_words_is_told_at_the_end()
    {
        _garage.Write(Garage.Estate,
            new SentOut("Plater", "zinc", [new("bolts of the tank", 8, null, [])], Garage.Day(-3), Garage.Day(9), null));
        var told = Assert.Single(Told());
        Assert.Equal((null, "At Plater: 8 × bolts of the tank, zinc; promised Tue 2026-03-10"), (told.Step, told.Says));
        Assert.Equal($"not here: {told.Says}", Block("bolts of the tank").Why);
    }

    /// <summary>What the owner leaves off on purpose is not asked for.</summary>
    [Fact]
    public void What_stays_off_on_purpose_is_no_block_though_it_is_away()
    {
        _garage.Write(Garage.Estate, new SentOut("Plater", "zinc", [new("part tank", 1, null, [])], Garage.Day(-3), null, null));
        Assert.DoesNotContain(RoadReadiness.Of(History().Car, [], ["part tank"], null, Told()), block => block.Thing == "part tank");
    }

    private RoadBlock Block(string thing) =>
        Assert.Single(RoadReadiness.Of(History().Car, [], [], null, Told()), block => block.Thing == thing);

    private CarHistory History() => Garage.Histories(_garage.Known)[0];

    private RefitSheet Sheet() => RefitPlanner.Of(History());

    private ValueList<Awaited> Told()
    {
        var (histories, sheet) = (Garage.Histories(_garage.Known), Sheet());
        return new AwaitedParts(histories[0].Car, histories, Garage.Day(0))
            .Of(sheet, RefitFasteners.Of(histories[0].Car, sheet, histories, Garage.Day(0)));
    }

    private ValueList<string> Absent() => new AwaitedParts(History().Car, Garage.Histories(_garage.Known), Garage.Day(0)).Absent;

    private static Garage Apart()
    {
        var garage = new Garage("bench").Opened();
        foreach (var joint in SmallCar.Structure.Joints.Where(joint => joint.Holds.Contains("tank")))
            garage.Write(Garage.Estate, new StepDone(Fact.Open(joint.Id), null, null));
        garage.Write(Garage.Estate, new StepDone(Fact.Off("tank"), null, null));
        return garage;
    }
}
