using Refettle.Access;
using Refettle.Access.Derivation;

namespace Refettle.Tests.Access;

public sealed class AccessPlannerTests
{
    private static readonly AccessPlanner Planner = new(new ReducedSolver(mostNodes: long.MaxValue));

    public static TheoryData<int> Seeds => [.. Enumerable.Range(0, 150)];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Every_plan_replays_and_leaves_alone_what_it_must(int seed)
    {
        var car = RandomCars.Make(seed);
        var question = RandomCars.Ask(car, seed);
        var plan = Planner.Reach(car, question);
        Assert.Empty(PlanCheck.Of(car, plan));
        if (plan.Status == PlanStatus.Impossible)
        {
            Assert.True(plan.Obstacle!.Forbidden.Count + plan.Obstacle.Stuck.Count > 0);
            return;
        }

        Assert.Equal(PlanStatus.Optimal, plan.Status);
        Assert.Equal(plan.Bound, plan.Cost.Total);
        Assert.All(plan.Steps, step => Assert.NotNull(Why.Of(plan, step.Fact)));
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Another_way_never_raises_the_cost(int seed)
    {
        var car = RandomCars.Make(seed);
        var question = RandomCars.Ask(car, seed);
        var random = new Random(seed);
        var number = random.Next(car.Structure.Joints.Count);
        var way = new Way { Id = "more", Tool = "other tool", Open = new(random.Next(1, 6)), Close = new(1) };
        var joints = car.Structure.Joints.Select((joint, i) => i == number ? joint with { Ways = [.. joint.Ways, way] } : joint);
        var richer = car with { Structure = car.Structure with { Joints = joints.ToValueList() } };
        Assert.True(CostOf(richer, question) <= CostOf(car, question));
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void A_done_step_never_raises_what_is_left(int seed)
    {
        var car = RandomCars.Make(seed);
        var question = RandomCars.Ask(car, seed);
        var plan = Planner.Reach(car, question);
        foreach (var step in plan.Steps)
        {
            var before = CostOf(car, question);
            car = step.Fact.Kind == FactKind.State && car.Structure.States.Single(state => state.Id == step.Fact.Subject).IsStance
                ? car with { Stance = step.Fact.Subject }
                : car with { Done = [.. car.Done, step.Fact] };
            Assert.True(CostOf(car, question) <= before, $"after {step.Fact}");
        }

        Assert.True(plan.Status == PlanStatus.Impossible || CostOf(car, question) == 0);
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void The_order_of_the_sheet_means_nothing(int seed)
    {
        var car = RandomCars.Make(seed);
        var question = RandomCars.Ask(car, seed);
        var random = new Random(seed);
        var structure = car.Structure;
        var shuffled = car with
        {
            Structure = structure with
            {
                Parts = Shuffle(structure.Parts),
                SubAssemblies = Shuffle(structure.SubAssemblies),
                Joints = Shuffle(structure.Joints.Select(joint => joint with { Ways = Shuffle(joint.Ways), Holds = Shuffle(joint.Holds) })),
            },
        };
        Assert.Equal(CostOf(car, question), CostOf(shuffled, question));

        ValueList<T> Shuffle<T>(IEnumerable<T> items) => items.OrderBy(_ => random.Next()).ToValueList();
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void A_plan_with_a_step_left_out_does_not_replay(int seed)
    {
        var car = RandomCars.Make(seed);
        var plan = Planner.Reach(car, RandomCars.Ask(car, seed));
        if (plan.Status == PlanStatus.Impossible)
            return;
        for (var i = 0; i < plan.Steps.Count; i++)
        {
            var shorter = plan with { Steps = plan.Steps.Where((_, number) => number != i).ToValueList() };
            Assert.NotEmpty(PlanCheck.Of(car, shorter));
        }
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Other_plans_differ_and_cost_no_less(int seed)
    {
        var car = RandomCars.Make(seed);
        var question = RandomCars.Ask(car, seed);
        var best = Planner.Reach(car, question);
        var last = best.Cost.Total;
        foreach (var other in Planner.Others(car, question, most: 3))
        {
            Assert.Empty(PlanCheck.Of(car, other.Plan));
            Assert.True(other.Plan.Cost.Total >= last);
            Assert.True(other.Instead.Count + other.Spares.Count + other.OtherWays.Count > 0);
            last = other.Plan.Cost.Total;
        }
    }

    [Fact]
    public void What_forbids_a_plan_is_named()
    {
        var car = new Car
        {
            Id = "car",
            Name = "Car",
            Structure = new()
            {
                Parts = [new() { Id = "shell", Name = "Shell", Fixed = true },
                    new() { Id = "core", Name = "Heater core", Scarcity = Scarcity.Unique }],
                Joints =
                [
                    new()
                    {
                        Id = "bond",
                        Holds = ["core", "shell"],
                        Ways = [new() { Id = "cut", Tool = "saw", Destroys = ["core"] }],
                    },
                ],
            },
        };
        var plan = Planner.Reach(car, Question.For(Fact.Off("core")));
        Assert.Equal(PlanStatus.Impossible, plan.Status);
        Assert.Equal(["destroying Heater core"], plan.Obstacle!.Forbidden);
        Assert.True(plan.Obstacle.Proven);
        var lifted = car with { Settings = car.Settings with { Lifted = ["core"] } };
        Assert.Equal(PlanStatus.Optimal, Planner.Reach(lifted, Question.For(Fact.Off("core"))).Status);
    }

    private static decimal CostOf(Car car, Question question)
    {
        var plan = Planner.Reach(car, question);
        return plan.Status == PlanStatus.Impossible ? decimal.MaxValue : plan.Cost.Total.Value;
    }
}
