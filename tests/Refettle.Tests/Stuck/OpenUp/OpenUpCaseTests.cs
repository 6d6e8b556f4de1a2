using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Stuck;
using Refettle.Stuck.OpenUp;
using Refettle.Tests.Access;

namespace Refettle.Tests.Stuck.OpenUp;

public sealed class OpenUpCaseTests
{
    private static readonly AccessPlanner Planner = new(new ReducedSolver());

    /// <summary>Over random cars: once the openings that a rung needs are carried out, nothing but what is not in hand closes its gate;
    /// and a rung that needs none is open to begin with.</summary>
    [Fact]
    public void What_is_opened_for_a_try_opens_its_gate()
    {
        var opened = 0;
        for (var seed = 0; seed < 150; seed++)
        {
            var car = GateTests.WithHazards(RandomCars.Make(seed), seed) with { Done = [] };
            var joints = car.Structure.Joints.Where((_, number) => number % 5 == 0).Select(joint => joint.Id).ToValueList();
            var made = OpenUpCase.Of(car, joints, [], GateTests.Ladder(), AtHand.Nothing, Later.CommonPractice, Planner);
            if (!made.IsGood)
                continue;
            var before = AfterPlan.Of(car, made.Value.Before);
            foreach (var joint in made.Value.Question.Joints)
                opened += Check(before, joint, made.Value.Question);
        }

        Assert.True(opened > 50, $"{opened}");
    }

    [Fact]
    public void What_is_planned_anyway_costs_nothing_more()
    {
        var car = Tank();
        var without = OpenUpCase.Of(car, ["bolt"], [], GateTests.Ladder(), AtHand.Nothing, Later.CommonPractice, Planner).Value;
        var with = OpenUpCase.Of(car, ["bolt"], [Fact.Off("tank")], GateTests.Ladder(), AtHand.Nothing, Later.CommonPractice,
            Planner).Value;
        Assert.Equal(20, Assert.Single(without.Question.Openings).Steps.Sum(step => without.Question.Steps[step].Takes.Value));
        Assert.Empty(with.Question.Openings);
        Assert.True(OpenUpPlanner.Best(with.Question, () => new(1)).TryFirst.ExpectedMinutes <= OpenUpPlanner.Best(without.Question,
            () => new(1)).Best.ExpectedMinutes);
    }

    private static int Check(Car before, StuckJoint joint, OpenUpQuestion question)
    {
        var opened = 0;
        foreach (var rung in joint.Ladders[joint.Condition].Rungs.Where(rung => !joint.Forbidden.Contains(rung.Id)))
        {
            var facts = joint.Needs.GetValueOrDefault(rung.Id, []).SelectMany(number => question.Openings[number].Facts).ToValueList();
            var plan = facts.Count == 0 ? null : Planner.Reach(before, new() { Goals = facts });
            if (plan?.Status == PlanStatus.Impossible)
                continue;
            var standing = new CarStanding(plan is null ? before : AfterPlan.Of(before, plan));
            Assert.Empty(Gate.Of(standing, standing.Joints[joint.Id], rung, AtHand.Nothing));
            opened += facts.Count > 0 ? 1 : 0;
        }

        return opened;
    }

    private static Car Tank() => new()
    {
        Id = "car",
        Name = "Car",
        Structure = new()
        {
            Parts =
            [
                new() { Id = "shell", Name = "Shell", Fixed = true },
                new() { Id = "arm", Name = "Arm" },
                new() { Id = "tank", Name = "Tank", Hazards = [Hazard.Fuel] },
            ],
            Joints =
            [
                new() { Id = "bolt", Holds = ["arm", "shell"], Ways = [new() { Id = "w", Tool = "spanner" }] },
                new() { Id = "strap", Holds = ["tank", "shell"],
                    Ways = [new() { Id = "w", Tool = "spanner", Open = new(12), Close = new(8) }] },
            ],
        },
    };
}
