using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Tests.Logbook;
using Refettle.Timeline;

namespace Refettle.Tests.Timeline.Network;

public sealed class OwnTaskTests
{
    /// <summary>The derived task keeps its name and its place: what the owner says of his own is not said of it.</summary>
    [Fact]
    public void A_task_named_like_a_derived_one_gets_another_name_its_own_links_and_a_note()
    {
        var car = SmallCar.After().Car with
        { Calendar = new() { Tasks = [Own("strip.wheel"), Own("polish") with { Before = ["strip.wheel"] }, Own("order.clips")] } };
        car = car with
        {
            Calendar = car.Calendar with
            { Tasks = [car.Calendar.Tasks[0] with { After = ["order.clips"] }, .. car.Calendar.Tasks.Skip(1)] }
        };
        var network = TimelineWork.Of(car, [Fact.Off("wheel")], new([]), new AccessPlanner(new ReducedSolver())).Value.Network!;
        Assert.Equal("order.clips", Assert.Single(network.Links, link => link.After == "strip.wheel-2").Before);
        Assert.DoesNotContain(network.Links, link => link is { Before: "order.clips", After: "strip.wheel" });
        Assert.Contains(network.Links, link => link is { Before: "polish", After: "strip.wheel" });
        var note = Assert.Single(network.Notes);
        Assert.Equal(("task strip.wheel", "a task that follows from the car has this name: yours is strip.wheel-2 here"),
            (note.Place, note.Found));
    }

    private static OwnTask Own(string id) => new() { Id = id, Name = id, Takes = new(10) };
}
