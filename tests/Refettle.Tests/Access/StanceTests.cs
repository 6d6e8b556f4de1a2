using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Checks;

namespace Refettle.Tests.Access;

/// <summary>A car stands on what is there: common practice, no source.</summary>
public sealed class StanceTests
{
    private static readonly AccessPlanner Planner = new(new ReducedSolver());

    [Fact]
    public void It_is_not_let_down_onto_wheels_that_are_off()
    {
        Assert.Equal(PlanStatus.Impossible, Reach(Car(), Fact.Off("wheel"), Fact.State("on-wheels")).Status);
        Assert.Equal(PlanStatus.Impossible, Reach(Car(), Fact.Off("hub"), Fact.State("at-ride-height")).Status);
        Assert.Equal(PlanStatus.Impossible,
            Reach(Car() with { Done = [Fact.Off("wheel")], Stance = "on-stands" }, Fact.State("on-wheels")).Status);
        Assert.Equal(PlanStatus.Optimal, Reach(Car(), Fact.Off("wheel"), Fact.State("on-stands")).Status);
        Assert.Equal(PlanStatus.Optimal, Reach(Car(), Fact.Off("guard"), Fact.State("on-wheels")).Status);
    }

    [Fact]
    public void What_does_not_carry_the_car_is_named_where_it_stands_in_the_way()
    {
        var car = Car();
        var stands = car.Structure.States.Select(state => state.Id == "on-stands" ? state with { Supports = ["body"] } : state);
        car = car with { Structure = car.Structure with { States = stands.ToValueList() }, Unsound = ["body"] };
        Assert.Equal(["on-stands: Body has to carry the car and was found too weak"], Reach(car, Fact.Off("wheel")).Obstacle!.Weak);
        car = Car() with { Done = [Fact.Off("wheel")], Stance = "on-stands" };
        Assert.Equal(["on-wheels: Wheel has to carry the car and is off"], Reach(car, Fact.State("on-wheels")).Obstacle!.Weak);
    }

    [Fact]
    public void To_stand_on_its_wheels_without_them_is_no_question()
    {
        var fault = Assert.Single(
            QuestionCheck.Of(new CarStanding(Car()), new() { Goals = [Fact.Free("wheel"), Fact.State("on-wheels")] }));
        Assert.Contains("free(wheel) takes off what the car stands on in state(on-wheels)", fault.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_done_on_its_wheels_is_done_before_they_come_off()
    {
        var plan = Reach(Car(), Fact.Off("hub"), Fact.Open("strap"));
        var order = plan.Steps.Select(step => step.Fact).ToList();
        Assert.True(order.IndexOf(Fact.Open("strap")) < order.IndexOf(Fact.Off("wheel")), string.Join(", ", order));
    }

    [Fact]
    public void A_way_that_asks_for_a_stance_and_against_what_carries_it_is_none()
    {
        var car = Car();
        car = car with
        {
            Structure = car.Structure with
            {
                Joints = [.. car.Structure.Joints.Where(joint => joint.Id != "strap"),
                    Joint("strap", "guard", Fact.State("on-wheels"), Fact.Off("wheel"))]
            }
        };
        Assert.Equal([Fact.Open("strap")], Reach(car, Fact.Open("strap")).Obstacle!.Stuck);
    }

    /// <summary>Its nuts are undone on the wheels, and nothing asks for another stance.</summary>
    [Fact]
    public void What_the_car_stands_on_does_not_come_off_unsaid()
    {
        var car = Car();
        car = car with { Structure = car.Structure with { Joints = [Joint("nuts", "wheel", Fact.State("on-wheels"))] } };
        Assert.Contains("The car stands on it now (on-wheels): carry the car some other way before it comes off.",
            Reach(car, Fact.Off("wheel")).Steps.Single(step => step.Fact == Fact.Off("wheel")).Cautions);
        Assert.DoesNotContain(Reach(Car(), Fact.Off("hub")).Steps.SelectMany(step => step.Cautions),
            caution => caution.StartsWith("The car stands on it", StringComparison.Ordinal));
    }

    /// <summary>It stands on its stands already, and its sill turns out to be rust.</summary>
    [Fact]
    public void Nobody_is_sent_under_what_stands_on_a_weak_part_without_a_word()
    {
        var car = Car() with { Stance = "on-stands", Unsound = ["body"] };
        var stands = car.Structure.States.Select(state => state.Id == "on-stands" ? state with { Supports = ["body"] } : state);
        Car Working(string posture) => car with
        {
            Structure = car.Structure with
            { States = stands.ToValueList(), Zones = [car.Structure.Zones[0] with { Posture = posture }] }
        };
        const string Weak = "Not under it: Body was found too weak to carry the car, and the car stands on it now (on-stands).";
        Assert.All(Reach(Working("under"), Fact.Off("hub")).Steps, step => Assert.Equal(Weak, step.Cautions[0]));
        Assert.All(Reach(Working("standing"), Fact.Off("hub")).Steps, step => Assert.DoesNotContain(Weak, step.Cautions));
    }

    /// <summary>The hub needs the wheel off, and that one may not be touched.</summary>
    [Fact]
    public void Two_sets_of_goals_are_compared_under_the_same_conditions_and_only_where_both_have_plans()
    {
        var compared = Planner.Compare(Car(), new() { Goals = [Fact.Off("guard")], Without = ["wheel"] }, [Fact.Off("hub")]);
        Assert.Equal((PlanStatus.Optimal, PlanStatus.Impossible, PlanStatus.Impossible, null),
            (compared.First.Status, compared.Second.Status, compared.Both.Status, compared.Shared));
        Assert.Equal(0, Planner.Compare(Car(), new() { Goals = [Fact.Off("guard")] }, [Fact.Off("hub")]).Shared!.Value.Value);
    }

    /// <summary>Stances come and go one for another, so none is on the way to the next.</summary>
    [Fact]
    public void A_stance_does_not_wait_for_another()
    {
        var car = Car();
        car = car with
        { Structure = car.Structure with { States = [.. car.Structure.States, Stance("on-ramps", Fact.State("on-stands"))] } };
        Assert.Equal("state on-ramps", Assert.Single(StructureCheck.Of(car.Structure), fault => fault.Severity == Severity.Error).Place);
        Assert.Equal(PlanStatus.Impossible, Reach(car, Fact.State("on-ramps")).Status);
    }

    private static Plan Reach(Car car, params ValueList<Fact> goals) => Planner.Reach(car, new() { Goals = goals });

    private static Car Car() => new()
    {
        Id = "car",
        Name = "Car",
        Stance = "on-wheels",
        Structure = new()
        {
            Zones = [new() { Id = "car", Name = "Car" }],
            States = [Stance("on-wheels"), Stance("at-ride-height"), Stance("on-stands")],
            Parts =
            [
                new() { Id = "body", Name = "Body", Fixed = true }, new() { Id = "hub", Name = "Hub" },
                new() { Id = "guard", Name = "Guard" },
                new() { Id = "wheel", Name = "Wheel", Roles = ["wheel"] },
            ],
            Joints = [Joint("nuts", "wheel", Fact.State("on-stands")), Joint("hub-bolt", "hub", Fact.Off("wheel")),
                Joint("strap", "guard", Fact.State("on-wheels"))],
        },
    };

    private static State Stance(string id, params ValueList<Fact> clear) =>
        new()
        {
            Id = id,
            Name = id,
            IsStance = true,
            Ways = [new() { Id = "jack", Tool = "jack", Open = new(5), Close = new(0), Clear = clear }]
        };

    private static Joint Joint(string id, string part, params ValueList<Fact> clear) =>
        new()
        {
            Id = id,
            Kind = JointKind.Bolt,
            Holds = [part, "body"],
            Ways = [new() { Id = "spanner", Tool = "spanner", Open = new(1), Close = new(1), Clear = clear }]
        };
}
