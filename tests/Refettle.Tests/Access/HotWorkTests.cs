using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Access.Fire;

namespace Refettle.Tests.Access;

/// <summary>Ways with flame, sparks or cutting wait for the same as tries do: no fuel, filled brake line or
/// live airbag near them (29 CFR 1910.252(a): combustibles away before hot work).</summary>
public sealed class HotWorkTests
{
    private static readonly AccessPlanner _planner = new(new ReducedSolver());

    /// <summary>No spark at what has fuel in it: the joint holds, and nothing is offered for it.</summary>
    [Fact]
    public void What_no_way_opens_is_told_as_holding_all_the_same()
    {
        var car = new Car
        {
            Id = "car",
            Name = "Car",
            Structure = new()
            {
                Parts = [new() { Id = "shell", Name = "Shell", Fixed = true },
                    new() { Id = "tank", Name = "Tank", Hazards = [Hazard.Fuel] }],
                Joints = [new()
                    { Id = "strap", Kind = JointKind.Strap, Holds = ["tank", "shell"],
                        Ways = [new() { Id = "grinder", Tool = "angle grinder", Open = new(2), Close = new(2) }] }],
            },
        };
        var hold = Assert.Single(Holds.Of(car, "tank").Joints);
        Assert.Equal(("strap", null, null), (hold.Joint, hold.Tool, hold.Open));
    }

    [Fact]
    public void No_plan_and_no_other_plan_uses_fire_while_something_near_burns()
    {
        var (hot, gated) = (0, 0);
        for (var seed = 0; seed < 100; seed++)
        {
            var car = HotCars.Make(seed, hazardOneIn: 9);
            var question = RandomCars.Ask(car, seed);
            var plans = _planner.Others(car, question, most: 2).Select(other => other.Plan).Prepend(_planner.Reach(car, question));
            foreach (var (joint, way, off, states) in plans.SelectMany(plan => HotSteps(car, plan)))
            {
                hot++;
                gated += FireOracle.Burning(car, joint, way, new HashSet<string>(), new HashSet<string>()).Any() ? 1 : 0;
                Assert.True(!FireOracle.Burning(car, joint, way, off, states).Any(),
                    $"seed {seed}: {joint.Id} by {way.Tool} near {string.Join(", ", FireOracle.Burning(car, joint, way, off, states))}");
            }
        }

        Assert.True(hot > 100 && gated > 10, $"{hot} hot, {gated} behind something");
    }

    /// <summary>The check finds a plan whose safeguards are taken out, by itself.</summary>
    [Fact]
    public void The_check_sees_fire_beside_a_tank()
    {
        var (car, plan) = (Strap("cut-off wheel"), _planner.Reach(Strap("cut-off wheel"), Question.For(Fact.Open("strap"))));
        Assert.Contains(Fact.Off("tank"), plan.Steps.Select(step => step.Fact));
        var bare = plan with { Steps = plan.Steps.Where(step => step.Fact == Fact.Open("strap")).ToValueList() };
        Assert.Contains(PlanCheck.Of(car, bare), fault => fault.Found.Contains("tank", StringComparison.Ordinal));
        Assert.DoesNotContain(PlanCheck.Of(Strap("13 mm socket"), bare), fault => fault.Found.Contains("tank", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("hand hacksaw", true)]
    [InlineData("reciprocating saw", false)]
    public void A_way_that_can_never_be_safe_is_not_offered_and_the_obstacle_says_why(string tool, bool isOffered)
    {
        var car = Strap(tool);
        var held = car with
        {
            Structure = car.Structure with
            {
                Joints = car.Structure.Joints.Select(joint => joint.Id == "strap" ? joint with { Holds = ["tank", "shell"] } : joint)
                    .ToValueList()
            }
        };
        var plan = _planner.Reach(held, Question.For(Fact.Open("strap")));
        Assert.Equal(isOffered, plan.Status == PlanStatus.Optimal);
        if (!isOffered)
            Assert.Contains("Tank", Assert.Single(plan.Obstacle!.Fire), StringComparison.Ordinal);
    }

    /// <summary>From memory of the trade: what each tool makes. A drill, a spanner and a blade driven by hand make no fire.</summary>
    [Theory]
    [InlineData("flame and hacksaw", Danger.Flame | Danger.Heat)]
    [InlineData("reciprocating saw and hand file", Danger.Cutting)]
    [InlineData("hand saw", Danger.None)]
    [InlineData("cut off wheel", Danger.Spark | Danger.Cutting)]
    [InlineData("grinder; torch.", Danger.Flame | Danger.Heat | Danger.Spark)]
    [InlineData("MIG set", Danger.Flame | Danger.Heat | Danger.Spark)]
    [InlineData("cut-off wheel and chisel", Danger.Spark | Danger.Cutting)]
    [InlineData("reciprocating saw beside the eye", Danger.Cutting)]
    [InlineData("induction heater, hammer and drift", Danger.Heat)]
    [InlineData("hot-air gun and knife", Danger.Heat)]
    [InlineData("spot-weld cutter and seam splitter", Danger.Cutting)]
    [InlineData("hand hacksaw", Danger.None)]
    [InlineData("2 kg hammer on the disc", Danger.None)]
    [InlineData("side cutters", Danger.None)]
    [InlineData("drill and M10 tap", Danger.None)]
    public void The_words_of_a_tool_say_what_it_sets_alight(string tool, Danger danger) => Assert.Equal(danger, HotWork.OfTool(tool));

    [Fact]
    public void What_is_said_of_a_way_adds_to_its_tool_and_never_takes_away()
    {
        var way = new Way { Id = "w", Tool = "torch", Danger = Danger.Spark };
        Assert.Equal(Danger.Flame | Danger.Heat | Danger.Spark, HotWork.Of(way, joint: null));
        Assert.Equal(Danger.Flame | Danger.Heat, HotWork.Of(way with { Danger = Danger.None }, joint: null));
    }

    private static IEnumerable<(Joint, Way, IReadOnlySet<string>, IReadOnlySet<string>)> HotSteps(Car car, Plan plan)
    {
        var (off, states) = (new HashSet<string>(), new HashSet<string>());
        foreach (var step in plan.Steps)
        {
            if (step.Fact.Kind == FactKind.Open && car.Structure.Joints.Single(joint => joint.Id == step.Fact.Subject) is var joint
                && joint.Ways.Single(way => way.Id == step.Way) is var way && FireOracle.MakesFire(joint, way))
                yield return (joint, way, off, states);
            if (step.Fact.Kind == FactKind.State)
                states.Add(step.Fact.Subject);
            if (step.Fact.Kind == FactKind.Off)
                off.UnionWith(car.Structure.SubAssemblies.FirstOrDefault(unit => unit.Id == step.Fact.Subject)?.Members
                    ?? [step.Fact.Subject]);
        }
    }

    /// <summary>A strap to the shell, with a tank beside it.</summary>
    private static Car Strap(string tool) => new()
    {
        Id = "car",
        Name = "Car",
        Structure = new()
        {
            Zones = [new() { Id = "under", Name = "Under", Near = ["under"] }],
            Parts = [new() { Id = "shell", Name = "Shell", Fixed = true }, new() { Id = "band", Name = "Band", Zone = "under" },
                new() { Id = "tank", Name = "Tank", Zone = "under", Hazards = [Hazard.Fuel] }],
            Joints = [new() { Id = "strap", Holds = ["band", "shell"], Ways = [new() { Id = "only", Tool = tool, Open = new(3) }] }],
        },
    };
}
