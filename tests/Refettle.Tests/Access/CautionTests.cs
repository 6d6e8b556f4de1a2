using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.CloseUp.Refit;
using Refettle.Logbook;
using Refettle.Timeline.Network;

namespace Refettle.Tests.Access;

/// <summary>No step of a strip or a refit lacks a caution that the facts of the car ask for.</summary>
public sealed class CautionTests
{
    private static readonly AccessPlanner _planner = new(new ReducedSolver());

    [Fact]
    public void No_step_of_a_plan_of_its_tasks_or_of_the_refit_lacks_a_caution_it_needs()
    {
        var (steps, refits) = (0, 0);
        for (var seed = 0; seed < 80; seed++)
        {
            var car = HotCars.Make(seed);
            var plan = _planner.Reach(car, RandomCars.Ask(car, seed));
            foreach (var step in Worked(plan.Steps))
                None(seed, CautionOracle.Lacking(car, step.Fact, step.Tool, step.Posture, step.Cautions));
            foreach (var task
                in NetworkPlanner.Of(new() { Car = car, Plan = plan }).Tasks.Where(task => task.Kind is TaskKind.Strip or TaskKind.Refit))
                None(seed, Worked(task.Steps)
                    .SelectMany(step => CautionOracle.Lacking(car, step.Fact, step.Tool, step.Posture, task.Cautions)));

            var apart = car with
            {
                Done = plan.Steps.Select(step => step.Fact).Where(fact => !IsStance(car, fact)).ToValueList(),
                Stance = plan.Steps.Select(step => step.Stance).LastOrDefault(car.Stance)
            };
            var sheet = RefitPlanner.Of(new(apart, [], []));
            foreach (var step in sheet.Steps.Where(step => step.Fact.Subject is not null && !IsStance(car, step.Fact)))
                None(seed, CautionOracle.Lacking(apart, step.Fact, tool: null, Posture(apart, step.Fact), step.Cautions));
            (steps, refits) = (steps + plan.Steps.Count, refits + sheet.Steps.Count);
        }

        Assert.True(steps > 300 && refits > 300, $"{steps} steps, {refits} of refits");
    }

    [Theory]
    [InlineData("heat", "induction heater", true)]
    [InlineData("spanner", "13 mm spanner", false)]
    public void What_was_heated_at_the_strip_is_not_fitted_again(string way, string tool, bool isScrap)
    {
        var car = new Car
        {
            Id = "car",
            Name = "Car",
            Done = [Fact.Open("bolt")],
            Structure = new()
            {
                Parts = [new() { Id = "shell", Name = "Shell", Fixed = true }, new() { Id = "arm", Name = "Arm" }],
                Joints = [new()
                    { Id = "bolt", Thread = "M12", Holds = ["arm", "shell"], Ways = [new() { Id = way, Tool = tool, Open = new(1) }] }],
            },
        };
        var entry = new Entry
        {
            Id = Guid.Empty,
            Car = "car",
            Device = "d",
            Sequence = 1,
            Salt = "",
            Previous = "",
            At = DateTimeOffset.UnixEpoch,
            Kind = "step-done",
            Version = 1,
            Payload = "{}"
        };
        var history = new CarHistory(car, [new(entry, new StepDone(Fact.Open("bolt"), way, null), Standing.InForce, null)], []);
        Assert.Equal(isScrap, RefitPlanner.Of(history).Steps.Single().Cautions.Contains(UsualCautions.Heated));
    }

    private static IEnumerable<Step> Worked(IEnumerable<Step> steps) => steps.Where(step => !PlanOutline.FollowsByItself(step));

    /// <summary>A zone below counts whatever way is used; a way of its own only while it is the only one.</summary>
    private static string Posture(Car car, Fact fact) =>
        fact.Kind == FactKind.Off && car.Structure.Parts.FirstOrDefault(part => part.Id == fact.Subject) is { } part
        && car.Structure.Zones.First(zone => zone.Id == part.Zone).Posture == "under" ? "under" : "";

    private static bool IsStance(Car car, Fact fact) =>
        fact.Kind == FactKind.State && car.Structure.States.Single(state => state.Id == fact.Subject).IsStance;

    private static void None(int seed, IEnumerable<string> lacking) =>
        Assert.True(!lacking.Any(), $"seed {seed}: {string.Join("; ", lacking)}");
}
