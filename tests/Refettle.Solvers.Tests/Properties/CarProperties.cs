using Refettle.Access;
using Refettle.Peers.Cars;

namespace Refettle.Solvers.Tests.Properties;

/// <summary>What must hold of plans for any car.</summary>
public sealed class CarProperties
{
    private static readonly AccessPlanner Planner = new(UnderTest.Make());

    public static TheoryData<CarKind, int> Cars
    {
        get
        {
            var cars = new TheoryData<CarKind, int>();
            foreach (var kind in Enum.GetValues<CarKind>())
                for (var seed = 1; seed <= 8; seed++)
                    cars.Add(kind, seed);
            return cars;
        }
    }

    [Theory]
    [MemberData(nameof(Cars))]
    public void A_plan_replays_step_by_step(CarKind kind, int seed)
    {
        var (car, question) = Make(kind, seed);
        var plan = Planner.Reach(car, question);
        Assert.Equal(PlanStatus.Optimal, plan.Status);
        Assert.Equal(plan.Cost.Total, plan.Bound);
        Assert.Empty(PlanCheck.Of(car, plan));
    }

    [Theory]
    [MemberData(nameof(Cars))]
    public void The_order_of_the_sheet_changes_no_cost(CarKind kind, int seed)
    {
        var (car, question) = Make(kind, seed);
        var turned = car with
        {
            Structure = car.Structure with
            {
                Parts = car.Structure.Parts.Reverse().ToValueList(),
                Joints = car.Structure.Joints.Reverse().Select(joint => joint with { Ways = joint.Ways.Reverse().ToValueList() })
                    .ToValueList(),
                SubAssemblies = car.Structure.SubAssemblies.Reverse().ToValueList(),
            },
        };
        Assert.Equal(Planner.Reach(car, question).Cost.Total, Planner.Reach(turned, question).Cost.Total);
    }

    [Theory]
    [MemberData(nameof(Cars))]
    public void A_further_way_never_raises_the_cost(CarKind kind, int seed)
    {
        var (car, question) = Make(kind, seed);
        var joint = car.Structure.Joints[seed * 7 % car.Structure.Joints.Count];
        var other = new Way { Id = "new", Tool = "hands", Open = new(seed * 20) };
        var richer = car with
        {
            Structure = car.Structure with
            {
                Joints = car.Structure.Joints
                    .Select(each => each == joint ? joint with { Ways = joint.Ways.Append(other).ToValueList() } : each).ToValueList(),
            },
        };
        Assert.True(Planner.Reach(richer, question).Cost.Total <= Planner.Reach(car, question).Cost.Total);
    }

    // Opening and closing together: opening minutes alone may rise by a little, when another plan has become the cheaper one on the whole.
    [Theory]
    [MemberData(nameof(Cars))]
    public void A_step_that_is_done_never_raises_the_minutes_left(CarKind kind, int seed)
    {
        var (car, question) = Make(kind, seed);
        var plan = Planner.Reach(car, question);
        var left = plan.Cost.Total;
        foreach (var step in plan.Steps)
        {
            car = step.Fact.Kind == FactKind.State && step.Fact.Subject == CarGenerator.OnStands
                ? car with { Stance = step.Fact.Subject }
                : car with { Done = car.Done.Append(step.Fact).ToValueList() };
            var next = Planner.Reach(car, question).Cost.Total;
            Assert.True(next <= left, $"after {step.Fact} {next} are left, before it {left}");
            left = next;
        }

        Assert.Equal(Minutes.Zero, left);
    }

    private static (Car Car, Question Question) Make(CarKind kind, int seed)
    {
        var shape = new CarShape(kind, 24, seed);
        return (CarGenerator.Make(shape), new() { Goals = CarGenerator.Goals(shape, 1 + seed % 3) });
    }
}
