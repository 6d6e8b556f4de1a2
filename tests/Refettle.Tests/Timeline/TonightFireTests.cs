using NodaTime;
using Refettle.Access;
using Refettle.Tests.Access;
using Refettle.Tests.Timeline.Network;
using Refettle.Timeline.Network;
using Refettle.Timeline.Tonight;

namespace Refettle.Tests.Timeline;

/// <summary>What is offered tonight and makes fire (29 CFR 1910.252(a)): nothing burns near it on the car as it stands at that moment,
/// as <see cref="FireOracle"/> sees it, which shares nothing with the gates.</summary>
public sealed class TonightFireTests
{
    private static readonly Instant _now = Instant.FromUtc(2027, 3, 2, 18, 0);

    private static readonly Way _torch = new() { Id = "try", Tool = "torch" };

    [Fact]
    public void No_task_is_offered_whose_fire_gate_is_closed()
    {
        var (strips, tries, welds, refused) = (0, 0, 0, 0);
        for (var seed = 0; seed < 700; seed++)
        {
            if (RandomNetworks.Make(seed, Apart.ByPlan) is not { } one)
                continue;
            var car = one.Question.Car;
            var network = one.Network with
            {
                Tasks = one.Network.Tasks
                    .Select(task => IsReady(task) ? task with { Mark = new(task.Id, TaskProgress.Done, new(2027, 2, 2, 18, 0)) } : task)
                    .ToValueList()
            };
            var offers = TonightPlanner.Of(new()
            { Car = car, Network = network, Now = _now, Minutes = new(10_000), HasHelper = true }).Offers.Select(offer => offer.Task.Id)
                .ToHashSet();
            foreach (var task in network.Tasks)
            {
                foreach (var (joint, way, done, kind) in Fires(car, task))
                {
                    var burning = FireOracle.Burning(car, joint, way, Off(car, done), States(done)).ToList();
                    refused += burning.Count > 0 && !offers.Contains(task.Id) ? 1 : 0;
                    if (!offers.Contains(task.Id))
                        continue;
                    Assert.True(burning.Count == 0, $"seed {seed}: {task.Id} at {joint.Id} near {string.Join(", ", burning)}");
                    (strips, tries, welds) = kind switch
                    {
                        TaskKind.Strip => (strips + 1, tries, welds),
                        TaskKind.Try => (strips, tries + 1, welds),
                        _ => (strips, tries, welds + 1),
                    };
                }
            }
        }

        Assert.True(strips > 5 && tries > 5 && welds > 1 && refused > 50,
            $"{strips} ways, {tries} tries, {welds} welds offered, {refused} refused");
    }

    /// <summary>A sill that was cut beside a tank: it is welded tonight only once the tank is off.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_weld_beside_a_tank_is_not_for_tonight(bool isTankOff)
    {
        var car = HotStepTests.Cut(isTankOff ? [Fact.Open("seam"), Fact.Off("tank")] : [Fact.Open("seam")]);
        var network = NetworkPlanner.Of(new() { Car = car, Plan = Plan.Nothing });
        network = network with
        {
            Tasks = network.Tasks
                .Select(task => task.Kind == TaskKind.Refit
                    ? task
                    : task with { Mark = new(task.Id, TaskProgress.Done, new(2027, 2, 2, 18, 0)) }).ToValueList()
        };
        var answer = TonightPlanner.Of(new() { Car = car, Network = network, Now = _now, Minutes = new(10_000), HasHelper = true });
        Assert.Equal(isTankOff, answer.Offers.Any(offer => offer.Task.Steps.Any(step => step.Fact == Fact.Open("seam"))));
        Assert.Equal(!isTankOff, answer.NotNow.Any(one => one.Why.StartsWith("Not to be welded yet: Tank", StringComparison.Ordinal)));
    }

    /// <summary>Ways, tries and welds with fire of a task, each with what is done on the car by then.</summary>
    private static IEnumerable<(Joint Joint, Way Way, List<Fact> Done, TaskKind Kind)> Fires(Car car, WorkTask task)
    {
        var done = car.Done.ToList();
        Joint Of(string id) => car.Structure.Joints.Single(joint => joint.Id == id);
        if (task.Kind == TaskKind.Try && task.Rungs.Any(rung => (rung.Danger & (Danger.Spark | Danger.Flame | Danger.Cutting)) != 0))
            yield return (Of(task.Joint!), _torch, done, TaskKind.Try);
        foreach (var step in task.Kind is TaskKind.Strip or TaskKind.Refit ? task.Steps : [])
        {
            var joint = step.Fact.Kind == FactKind.Open ? Of(step.Fact.Subject) : null;
            if (task.Kind == TaskKind.Strip && joint?.Ways.FirstOrDefault(way => way.Id == step.Way) is { } way
                && FireOracle.MakesFire(joint, way))
                yield return (joint, way, [.. done], TaskKind.Strip);
            if (task.Kind == TaskKind.Refit && joint is { Kind: JointKind.Weld })
                yield return (joint, _torch, [.. done], TaskKind.Refit);
            if (task.Kind == TaskKind.Strip)
                done.Add(step.Fact);
            else
                done.Remove(step.Fact);
        }
    }

    /// <summary>Shields, orders and deliveries are over: they are no part of what burns.</summary>
    private static bool IsReady(WorkTask task) =>
        task.Kind is TaskKind.Shield or TaskKind.Order or TaskKind.Wait or TaskKind.Soak or TaskKind.Brace or TaskKind.Gaps
            or TaskKind.Work;

    private static HashSet<string> Off(Car car, IEnumerable<Fact> done) =>
    [
        .. done.Where(fact => fact.Kind == FactKind.Off)
            .SelectMany(fact => car.Structure.SubAssemblies.FirstOrDefault(unit => unit.Id == fact.Subject) is { } unit
                ? unit.Members.ToArray()
                : [fact.Subject]),
    ];

    private static HashSet<string> States(IEnumerable<Fact> done) =>
        [.. done.Where(fact => fact.Kind == FactKind.State).Select(fact => fact.Subject)];
}
