using NodaTime;
using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Timeline;
using Refettle.Timeline.Network;
using Refettle.Timeline.Tonight;

namespace Refettle.Tests.Timeline.Network;

/// <summary>Recovering refrigerant takes a licence (Regulation (EU) 2024/573, before it (EU) 517/2014; what they ask for is from memory):
/// it is booked and waited for, and nobody here does it.</summary>
public sealed class LicensedWorkTests
{
    private static readonly Car Car = new()
    {
        Id = "car",
        Name = "Car",
        Structure = new()
        {
            Parts = [new() { Id = "body", Name = "Body", Fixed = true },
                new() { Id = "condenser", Name = "Condenser", Hazards = [Hazard.Refrigerant] }],
            Joints = [new()
                { Id = "line", Kind = JointKind.Pipe, Holds = ["condenser", "body"],
                    Ways = [new() { Id = "w", Tool = "spanner", Open = new(10), Close = new(15), Clear = [Fact.State("recovered")] }] }],
            States = [new()
                { Id = "recovered", Name = "Refrigerant recovered",
                    Ways = [new() { Id = "w", Tool = "licensed workshop", Open = new(60), Close = new(60) }] }],
        },
        Calendar = new()
        {
            Spells = [new()
                { Id = "evenings", First = new(2027, 3, 2), From = new(18, 0), Until = new(21, 0), Repeats = new(Rhythm.Daily, 1, []) }]
        },
    };

    private static readonly TimelineWork Work =
        TimelineWork.Of(Car, [Fact.Off("condenser")], new([]), new AccessPlanner(new ReducedSolver())).Value;

    private static readonly Instant Now = Instant.FromUtc(2027, 3, 1, 8, 0);

    [Fact]
    public void It_is_booked_and_waited_for_both_ways_and_holds_nobodys_hands()
    {
        var answer = new TimelinePlanner(new Refettle.Timeline.Scheduling.FirstScheduler())
            .Of(Work.Ask(Now), new(TimeSpan.FromSeconds(5))).Value;
        Assert.DoesNotContain(answer.Notes, note => note.Severity == Severity.Error);
        string[] order = ["book.strip.recovered", "wait.shop.strip.recovered", "strip.recovered", "strip.condenser", "refit.condenser",
            "refit.recovered"];
        Assert.Equal(order, answer.Tasks.Select(task => task.Task.Id).Where(order.Contains));
        Assert.True(answer.Tasks.Single(task => task.Task.Id == "strip.recovered").Start >= new LocalDateTime(2027, 3, 9, 18, 10));
        Assert.All(Work.Network!.Tasks.Where(task => task.Steps.Any(LicensedWork.Is)), task => Assert.True(task.IsWait));
    }

    /// <summary>They keep it, so nothing is carried away: with the state, and where the line is opened without one (Regulation (EU)
    /// 2024/573, which repealed 517/2014).</summary>
    [Fact]
    public void What_was_recovered_stays_with_them_and_the_booking_asks_how_the_car_gets_there()
    {
        Assert.Contains("trailer", Assert.Single(Work.Network!.Tasks.Single(task => task.Id == "book.strip.recovered").Cautions),
            StringComparison.Ordinal);
        var plain = Car with
        {
            Structure = Car.Structure with
            {
                States = [],
                Joints = Car.Structure.Joints
                        .Select(joint => joint with { Ways = joint.Ways.Select(way => way with { Clear = [] }).ToValueList() })
                        .ToValueList()
            }
        };
        foreach (var network in new[] { Work.Network!,
            TimelineWork.Of(plain, [Fact.Off("condenser")], new([]), new AccessPlanner(new ReducedSolver())).Value.Network! })
        {
            var task = network.Tasks.Single(task => task.Kind == TaskKind.HandIn);
            Assert.Equal(WasteKind.Refrigerant, Assert.Single(task.Waste).Kind);
            Assert.Contains("nothing to carry away", task.Waste[0].HandIn, StringComparison.Ordinal);
        }
    }

    /// <summary>Booked and waited for: still it is not offered as work for tonight, nor is what comes after it.</summary>
    [Fact]
    public void It_is_never_offered_for_an_evening()
    {
        var marks = new[] { "book.strip.recovered",
            "wait.shop.strip.recovered" }.Select(id => new TaskMark(id, TaskProgress.Done, new(2027, 2, 20, 18, 0))).ToValueList();
        var car = Car with { Calendar = Car.Calendar with { Marks = marks } };
        var network = TimelineWork.Of(car, [Fact.Off("condenser")], new([]), new AccessPlanner(new ReducedSolver())).Value.Network!;
        var tonight = TonightPlanner.Of(new() { Car = car, Network = network, Now = Now, Minutes = new(300) });
        Assert.Equal(["book.refit.recovered"], tonight.Offers.Select(offer => offer.Task.Id).Order());
    }
}
