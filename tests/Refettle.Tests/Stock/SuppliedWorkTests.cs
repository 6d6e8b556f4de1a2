using NodaTime;
using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Logbook;
using Refettle.Stock;
using Refettle.Stock.Baskets;
using Refettle.Timeline.Network;
using Refettle.Timeline.Scheduling;

namespace Refettle.Tests.Stock;

/// <summary>What timeline, forecast and evening are asked of.</summary>
public sealed class SuppliedWorkTests
{
    private static readonly Instant Now = Instant.FromUtc(2026, 3, 1, 8, 0);

    [Fact]
    public void The_shelf_is_not_asked_for_a_goal_that_no_plan_reaches()
    {
        var supplied = Of(Garage(), Never(), Fact.Off("damper"), isWithoutWay: true).Value;
        Assert.Null(supplied.Work.Network);
        Assert.Equal("no plan reaches them", Assert.Single(supplied.Forecast(new FirstScheduler(), TimeSpan.FromSeconds(1)).Faults).Found);
    }

    [Fact]
    public void Nothing_to_do_is_a_fault_and_the_shelf_is_not_asked() =>
        Assert.Contains("no job is chosen", Assert.Single(Of(Garage(), Never(), null).Faults).Found, StringComparison.Ordinal);

    [Fact]
    public void The_tasks_wait_for_what_is_ordered_and_the_forecast_knows_how_its_supplier_keeps_promises()
    {
        var garage = Garage();
        garage.Write(Stock.Garage.Estate,
            new Ordered("Harbour Rubber", [new("DAMPER", 1)], Stock.Garage.Day(-2), Stock.Garage.Day(8), null, null));
        var supplied = Of(garage, Stock.Garage.Histories(garage.Known), Fact.Off("damper")).Value;
        Assert.Single(supplied.Work.Network!.Tasks, task => task.Delivery is { From: "Harbour Rubber" });
        var question = supplied.Forecast(new FirstScheduler(), TimeSpan.FromSeconds(1)).Value;
        Assert.Same(supplied.Work.Network, question.Network);
        Assert.Contains(question.Keeping, known => known.Who == "Harbour Rubber");
        Assert.NotNull(question.Schedule);
    }

    private static IEnumerable<CarHistory> Never() =>
        new CarHistory[1].Select(CarHistory (_) => throw new InvalidOperationException("The shelf was asked."));

    private static Garage Garage()
    {
        var garage = new Garage("bench").Opened();
        garage.Write(Stock.Garage.Estate,
            new SpellAdded(new()
            { Id = "evenings", First = new(2026, 3, 1), From = new(18, 0), Until = new(21, 0), Repeats = new(Rhythm.Daily, 1, []) }));
        garage.Write(Stock.Garage.Estate, new NumberAssigned("part damper", "DAMPER", 1));
        garage.Write(Stock.Garage.Estate, new VerdictGiven(new("damper", VerdictKind.Replace, DoneBy.Self, null)));
        return garage;
    }

    /// <param name="isWithoutWay">The damper's joints wait for each other.</param>
    private static Result<SuppliedWork> Of(Garage garage, IEnumerable<CarHistory> all, Fact? goal, bool isWithoutWay = false)
    {
        var history = Stock.Garage.Histories(garage.Known)[0];
        if (isWithoutWay)
            history = history with { Car = history.Car with { Structure = Locked(history.Car.Structure) } };
        return SuppliedWork.Of(history, all, goal is { } named ? [named] : [], new([]), new AccessPlanner(new ReducedSolver()), Now,
            Stock.Garage.Day(0));
    }

    private static Structure Locked(Structure structure) => structure with
    {
        SubAssemblies = [],
        Joints = structure.Joints.Select(joint => joint.Id switch
        {
            "damper-axle" => joint with { Ways = [joint.Ways[0] with { Clear = [Fact.Open("damper-body")] }] },
            "damper-body" => joint with { Ways = [joint.Ways[0] with { Clear = [Fact.Open("damper-axle")] }] },
            _ => joint,
        }).ToValueList(),
    };
}
