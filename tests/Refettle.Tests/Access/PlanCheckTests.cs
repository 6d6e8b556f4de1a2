using Refettle.Access;
using Refettle.Access.Derivation;

namespace Refettle.Tests.Access;

public sealed class PlanCheckTests
{
    private static readonly (Car Car, Plan Plan) First = Enumerable.Range(0, 100).Select(seed => RandomCars.Make(seed))
        .Select(car => (car, new AccessPlanner(new ReducedSolver()).Reach(car, Question.For(Fact.Free("p1"), Fact.Free("p2")))))
        .First(found => found.Item2.Status == PlanStatus.Optimal);

    private static Car Car => First.Car;

    private static Plan Plan => First.Plan;

    [Fact]
    public void A_sound_plan_passes() => Assert.Empty(PlanCheck.Of(Car, Plan));

    [Fact]
    public void A_step_that_says_another_cost_is_found() =>
        Assert.NotEmpty(PlanCheck.Of(Car, Change(step => step with { Cost = step.Cost with { Open = step.Cost.Open + new Minutes(1) } })));

    [Fact]
    public void A_way_that_the_joint_does_not_have_is_found() =>
        Assert.NotEmpty(PlanCheck.Of(Car, Change(step => step with { Way = "no such way" })));

    [Fact]
    public void A_bound_above_the_cost_is_found() =>
        Assert.NotEmpty(PlanCheck.Of(Car, Plan with { Bound = Plan.Cost.Total + new Minutes(1) }));

    [Fact]
    public void Steps_in_the_wrong_order_are_found() =>
        Assert.NotEmpty(PlanCheck.Of(Car, Plan with { Steps = Plan.Steps.Reverse().ToValueList() }));

    [Fact]
    public void A_part_that_may_not_be_touched_is_found() =>
        Assert.NotEmpty(PlanCheck.Of(Car, Plan with { Question = Plan.Question with { Without = ["p1"] } }));

    private static Plan Change(Func<Step, Step> change)
    {
        var first = Plan.Steps.First(step => step.Fact.Kind == FactKind.Open);
        var steps = Plan.Steps.Select(step => step == first ? change(step) : step).ToValueList();
        return Plan with { Steps = steps, Cost = steps.Aggregate(Cost.Nothing, (sum, step) => sum + step.Cost) };
    }
}
