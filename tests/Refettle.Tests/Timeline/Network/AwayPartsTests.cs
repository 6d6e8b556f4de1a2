using Refettle.Access;
using Refettle.Tests.Logbook;
using Refettle.Timeline.Network;

namespace Refettle.Tests.Timeline.Network;

public sealed class AwayPartsTests
{
    private static readonly Consignment Work = new("work", "At the plater: wheel", "Plater", new(2027, 2, 1), 10, 12, Origin.User);

    private static readonly Verdict Sent = new("wheel", VerdictKind.Refurbish, DoneBy.OutsideShop, null);

    /// <summary>The job has a wait at a shop of its own, which goes by the same name.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_part_at_a_shop_is_waited_for_though_a_job_has_its_name(bool isSaid)
    {
        var job = new Job
        {
            Id = "wheel",
            Name = "Wheel",
            Goals = [Fact.Off("wheel")],
            Waits = [new(WaitKind.OutsideShop, "balance", 3, null, Origin.User)]
        };
        var car = SmallCar.After().Car with { Done = [Fact.Off("wheel")], Verdicts = isSaid ? [Sent] : [] };
        var network =
            NetworkPlanner.Of(new() { Car = car, Plan = Plan.Nothing, Jobs = [job], Parts = new([], [new("wheel", "Wheel", Work)], []) });
        var back = Assert.Single(network.Tasks, task => task.Delivery == Work);
        Assert.Equal(back.Id, back.Mark!.Task);
        var after = Onward.From(back.Id, id => network.Links.Where(link => link.Before == id).Select(link => link.After).ToList());
        Assert.Contains("refit.wheel", after);
    }
}
