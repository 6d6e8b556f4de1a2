using NodaTime;
using Refettle.Access;
using Refettle.Stuck;
using Refettle.Tests.Timeline.Network;
using Refettle.Timeline;
using Refettle.Timeline.Network;
using Refettle.Timeline.Tonight;

namespace Refettle.Tests.Timeline;

public sealed class TonightTests
{
    private static readonly Instant Now = Instant.FromUtc(2027, 3, 2, 18, 0);

    /// <summary>What kits say of their ways fills the room that is left; what the program finds of
    /// hazards and gates is never left out.</summary>
    [Fact]
    public void Beside_an_offer_stands_every_caution_of_hazards_and_gates_and_the_others_are_counted()
    {
        ValueList<string> own = ["Mark the blade.", "Note the codes.", "Refill it."];
        var car = new Car
        {
            Id = "car",
            Name = "Car",
            Structure = new()
            {
                States = [new()
                        { Id = "off", Name = "Off", Ways = [new() { Id = "way", Tool = "spanner", Open = new(5), Cautions = own }] }]
            }
        };
        var task = new WorkTask
        {
            Id = "strip.off",
            Kind = TaskKind.Strip,
            Says = "Off",
            Takes = new(5),
            Cautions = [.. own, UsualCautions.Under, UsualCautions.Load]
        };
        var told = ToldCautions.Of(car, task);
        Assert.Equal(["Mark the blade.", UsualCautions.Under, UsualCautions.Load], told.Shown);
        Assert.Equal(["Note the codes.", "Refill it."], told.Further);
        var hard = ToldCautions.Of(car,
            task with
            {
                Cautions = [own[0], UsualCautions.Under, UsualCautions.Load, UsualCautions.Fire, UsualCautions.Fumes,
                UsualCautions.Heated]
            });
        Assert.Equal(([UsualCautions.Under, UsualCautions.Load, UsualCautions.Fire, UsualCautions.Fumes, UsualCautions.Heated], 1),
            (hard.Shown, hard.Further.Count));
    }

    /// <summary>Over random cars, partly taken apart, with random tasks marked: whatever is offered,
    /// nothing it waits for is open, no wait runs, its gate is open on the car as it stands with what
    /// is marked, and it fits the time.</summary>
    [Fact]
    public void Nothing_is_offered_that_a_wait_or_a_gate_forbids()
    {
        var (offered, tries) = (0, 0);
        for (var seed = 0; seed < 200; seed++)
        {
            if (RandomNetworks.Make(seed, Apart.ByPlan) is not { } one)
                continue;
            var network = Marked(one.Network, new Random(seed));
            var answer = TonightPlanner.Of(new()
            { Car = one.Question.Car, Network = network, Now = Now, Minutes = new(60), HasHelper = true });
            foreach (var offer in answer.Offers)
            {
                offered++;
                tries += offer.Task.Rungs.Count > 0 ? 1 : 0;
                Assert.True(offer.Task.Takes.Value <= 60 && !offer.Task.IsWait && offer.Task.Mark?.Progress != TaskProgress.Done);
                Assert.All(Before(network, offer.Task.Id),
                    before => Assert.True(IsOver(before), $"seed {seed}: {offer.Task.Id} before {before.Id}"));
                AssertGatesOpen(one.Question.Car, network, offer.Task);
            }

            Assert.True(answer.Evening.Sum(id => network.Tasks.Single(task => task.Id == id).Takes.Value) <= 60);
        }

        Assert.True(offered > 100 && tries > 5, $"{offered} offers, {tries} tries");
    }

    [Fact]
    public void A_running_wait_keeps_what_comes_after_it_and_tells_until_when()
    {
        var network = new TaskNetwork([Wait("cure", 24 * 60) with { Mark = new("cure", TaskProgress.Begun, new(2027, 3, 2, 12, 0)) },
            Task("fit", 30)], [new("cure", "fit")], []);
        var answer = TonightPlanner.Of(Asked(network));
        Assert.Empty(answer.Offers);
        Assert.Equal("cure: until Wed 2027-03-03 12:00", Assert.Single(answer.NotNow).Why);
        Assert.Equal("fit", Assert.Single(TonightPlanner.Of(Asked(network) with { Now = Now + Duration.FromHours(18) }).Offers).Task.Id);
    }

    /// <summary>Marked by a phone whose clock is a day ahead: what was marked has happened, so no more
    /// than the whole time has to pass.</summary>
    [Fact]
    public void What_was_marked_by_a_clock_that_is_ahead_has_just_happened()
    {
        var begun = new TaskNetwork([Wait("cure", 24 * 60) with { Mark = new("cure", TaskProgress.Begun, new(2027, 3, 3, 18, 0)) },
            Task("fit", 30)], [new("cure", "fit")], []);
        Assert.Equal("cure: until Wed 2027-03-03 18:00", Assert.Single(TonightPlanner.Of(Asked(begun)).NotNow).Why);
        var done = new TaskNetwork([Task("primer", 30) with { Mark = new("primer", TaskProgress.Done, new(2027, 3, 3, 18, 0)) },
            Task("top", 30)], [new("primer", "top", 12 * 60, 24 * 60, "recoat window")], []);
        Assert.Equal("primer: 12.0 h more have to pass", Assert.Single(TonightPlanner.Of(Asked(done)).NotNow).Why);
    }

    /// <summary>A mark does not bring an order into the books: what was only marked would be ordered again by the basket.</summary>
    [Fact]
    public void An_order_by_part_numbers_is_told_from_one_that_a_mark_ends()
    {
        var order = Task("order.quay", 13) with { Kind = TaskKind.Order };
        Assert.True(Placed(new("77-1", "Seal", "Quay Parts", null, 7, 7, Origin.Default)));
        Assert.False(Placed(new("parts", "Clips without a number", null, null, 5, 5, Origin.Default)));
        Assert.False(Placed(null));

        bool Placed(Consignment? delivery) =>
            Deliveries.IsPlaced(new([order, Wait("way", 5000) with { Delivery = delivery }], [new("order.quay", "way")], []), order);
    }

    /// <summary>Five orders of ten minutes would fill the page before the first bolt is named.</summary>
    [Fact]
    public void Orders_are_told_as_one_offer()
    {
        var orders = Enumerable.Range(1, 5).Select(i => Task($"order.{i}", 10) with { Kind = TaskKind.Order });
        var ways = Enumerable.Range(1, 5).Select(i => Wait($"way.{i}", 5000));
        var answer = TonightPlanner.Of(Asked(new([.. orders, .. ways, Task("tidy", 40)],
            Enumerable.Range(1, 5).Select(i => new TaskLink($"order.{i}", $"way.{i}")).ToValueList(), [])));
        Assert.Equal(6, answer.Offers.Count);
        Assert.Equal(5, answer.Orders.Count);
        Assert.Equal(["order.1", "tidy"], answer.WithOrdersAsOne.Select(offer => offer.Task.Id));
    }

    [Fact]
    public void A_closing_window_comes_before_a_longer_task_and_a_closed_one_is_not_offered()
    {
        WorkTask[] tasks = [Task("primer", 30) with { Mark = new("primer", TaskProgress.Done, new(2027, 3, 2, 2, 0)) }, Task("top", 30),
            Task("long", 60)];
        var network = new TaskNetwork([.. tasks], [new("primer", "top", 12 * 60, 24 * 60, "recoat window")], []);
        Assert.Equal(["top", "long"], TonightPlanner.Of(Asked(network)).Offers.Select(offer => offer.Task.Id));
        Assert.Equal(["long"],
            TonightPlanner.Of(Asked(network) with { Now = Now + Duration.FromHours(12) }).Offers.Select(offer => offer.Task.Id));
        Assert.Equal(["long"],
            TonightPlanner.Of(Asked(network) with { Now = Now - Duration.FromHours(6) }).Offers.Select(offer => offer.Task.Id));
    }

    /// <summary>A supplier's last day is no window of paint, and neither is a day that somebody set.</summary>
    [Fact]
    public void What_presses_is_called_by_what_it_is()
    {
        var trial = Task("trial", 15) with { Kind = TaskKind.TrialFit, Latest = new(2027, 3, 4, 0, 0) };
        Assert.Equal("its supplier takes it back until Wed 2027-03-03", Why(trial));
        Assert.Equal("it has to be done by Wed 2027-03-03 12:00", Why(Task("own", 15) with { Latest = new(2027, 3, 3, 12, 0) }));
        var network = new TaskNetwork([Task("primer", 30) with { Mark = new("primer", TaskProgress.Done, new(2027, 3, 2, 2, 0)) },
            Task("top", 30)], [new("primer", "top", 12 * 60, 24 * 60, "recoat window")], []);
        Assert.Equal("its window closes Wed 2027-03-03 02:00", Assert.Single(TonightPlanner.Of(Asked(network)).Offers).Why[0]);

        static string Why(WorkTask task) => Assert.Single(TonightPlanner.Of(Asked(new([task], [], []))).Offers).Why[0];
    }

    [Fact]
    public void What_starts_a_clock_comes_first_and_an_evening_is_filled()
    {
        var network = new TaskNetwork([Task("tidy", 40), Task("order", 10), Wait("way", 5000), Task("fit", 20)],
            [new("order", "way"), new("way", "fit")], []);
        var answer = TonightPlanner.Of(Asked(network));
        Assert.Equal(["order", "tidy"], answer.Offers.Select(offer => offer.Task.Id));
        Assert.Equal(["order", "tidy"], answer.Evening);
    }

    [Fact]
    public void Mood_helpers_and_ruled_out_days_are_minded()
    {
        var network = new TaskNetwork(
            [Task("under", 20) with { Posture = "under" }, Task("bleed", 20) with { Uses = [Needed.Helper] },
                Task("not-today", 20) with { Not = [new(new(2027, 3, 2), new(2027, 3, 2))] },
             Task("saturday", 20) with { FixedStart = new(2027, 3, 6, 9, 0) }, Task("too-long", 300),
             Task("desk", 20) with { Kind = TaskKind.Order }], [], []);
        Assert.Equal(["desk", "under"], Offered(Asked(network)));
        Assert.Equal(["desk"], Offered(Asked(network) with { Energy = Energy.Low }));
        Assert.Equal(["desk"], Offered(Asked(network) with { KeepClean = true }));
        Assert.Contains("bleed", Offered(Asked(network) with { HasHelper = true }));
        Assert.Equal("it takes 5.0 h, you have 70 min",
            TonightPlanner.Of(Asked(network)).NotNow.Single(one => one.Task.Id == "too-long").Why);
    }

    private static IEnumerable<string> Offered(TonightQuestion question) =>
        TonightPlanner.Of(question).Offers.Select(offer => offer.Task.Id).Order();

    /// <summary>Tasks at the front are marked done at random; waits behind them begun, some long enough ago.</summary>
    private static TaskNetwork Marked(TaskNetwork network, Random random)
    {
        var marks = new Dictionary<string, TaskMark>();
        foreach (var task in network.Tasks
            .Where(task => network.Links.Where(link => link.After == task.Id)
                .All(link => marks.TryGetValue(link.Before, out var mark) && mark.Progress == TaskProgress.Done)))
        {
            if (task.Kind is TaskKind.Strip or TaskKind.Try or TaskKind.Stance or TaskKind.Refit && task.Takes > Minutes.Zero)
                continue;
            if (random.Next(3) > 0)
                marks[task.Id] = new(task.Id, task.IsWait && random.Next(2) == 0 ? TaskProgress.Begun : TaskProgress.Done,
                    new LocalDateTime(2027, 3, 2, 18, 0).PlusHours(-random.Next(300)));
        }

        return network with { Tasks = network.Tasks.Select(task => task with { Mark = marks.GetValueOrDefault(task.Id) }).ToValueList() };
    }

    private static IEnumerable<WorkTask> Before(TaskNetwork network, string id)
    {
        var direct = network.Links.Where(link => link.After == id).Select(link => network.Tasks.Single(task => task.Id == link.Before))
            .ToList();
        return direct.Concat(direct.Where(task => task.Mark is null).SelectMany(task => Before(network, task.Id)));
    }

    private static bool IsOver(WorkTask task) => task.Takes == Minutes.Zero || task.Mark is { Progress: TaskProgress.Done }
        || (task is { IsWait: true, Mark: { } mark } && mark.At.PlusMinutes((int)task.Takes.Value) <= new LocalDateTime(2027, 3, 2, 18, 0));

    private static void AssertGatesOpen(Car car, TaskNetwork network, WorkTask task)
    {
        if (task.Rungs.Count == 0)
            return;
        var standing = new CarStanding(car);
        bool IsReady(string name) => network.Tasks.Any(one => one.Id.StartsWith(name, StringComparison.Ordinal) && IsOver(one));
        foreach (var rung in task.Rungs.Where(rung => rung.Danger != Danger.None || rung.Destroys.Count > 0))
            Assert.Empty(Gate.Of(standing, standing.Joints[task.Joint!], rung,
                new(IsReady($"wait.delivery.{task.Joint}") ? rung.Destroys : [], IsReady($"shield.{task.Joint}") ? [AtHand.All] : [])));
    }

    private static TonightQuestion Asked(TaskNetwork network) =>
        new() { Car = new() { Id = "car", Name = "Car" }, Network = network, Now = Now, Minutes = new(70) };

    private static WorkTask Task(string id, int minutes) => new() { Id = id, Kind = TaskKind.Own, Says = id, Takes = new(minutes) };

    private static WorkTask Wait(string id, int minutes) => Task(id, minutes) with { Kind = TaskKind.Wait, Pace = Pace.WallClock };
}
