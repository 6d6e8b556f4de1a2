using Refettle.Stuck;

namespace Refettle.Tests.Stuck;

/// <summary>Ratio rule: Mitten 1960, Butterworth 1972; Cambridge Mathematical Tripos Part II 2018
/// Paper 2 Question 30K. The two examples are computed by brute force over all orders.</summary>
public sealed class TryPlannerTests
{
    [Fact]
    public void Independent_tries_go_in_decreasing_chance_over_cost()
    {
        var answer = TryPlanner.Best(Known(("a", 0.10, 0.10), ("b", 0.60, 0.30), ("c", 0.50, 0.40), ("d", 1.0, 2.0)));
        Assert.Equal(["b", "c", "a", "d"], answer.IfHeld);
        Assert.Equal(0.840000, answer.ExpectedMinutes / 60, 6);
    }

    [Fact]
    public void A_ladder_climbs_from_impact_to_drill()
    {
        var answer = TryPlanner.Best(
            Known(("impact", 0.30, 0.10), ("soak", 0.35, 0.20), ("heat", 0.60, 0.50), ("weld-nut", 0.80, 1.20), ("drill", 1.0, 3.0)));
        Assert.Equal(["impact", "soak", "heat", "weld-nut", "drill"], answer.IfHeld);
        Assert.Equal(0.795100, answer.ExpectedMinutes / 60, 6);
    }

    [Fact]
    public void The_policy_agrees_with_trying_every_order()
    {
        for (var seed = 0; seed < 200; seed++)
        {
            var question = Ladders.Random(seed);
            var answer = TryPlanner.Best(question);
            Assert.Equal(Ladders.LeastOverAllPolicies(question), answer.ExpectedMinutes, 8);
        }
    }

    [Fact]
    public void A_soak_that_helps_pays_before_a_costly_heat()
    {
        Rung soak = new() { Id = "soak", Says = "Soak", Takes = new(2), Waits = new(720), IsSoak = true, Odds = [0.5, 0.2, 0.1, 0, 0] };
        Rung heat = new()
        { Id = "heat", Says = "Heat", Takes = new(30), Odds = [0.9, 0.8, 0.5, 0.2, 0.05], OddsSoaked = [1, 0.95, 0.8, 0.6, 0.3] };
        Rung cut = new() { Id = "cut", Says = "Cut", Takes = new(90), Odds = [1, 1, 1, 1, 1] };
        var question = Of([soak, heat, cut]) with { Belief = [0, 0, 0, 0.5, 0.5] };
        Assert.Equal("soak", TryPlanner.Best(question).Best.Id);
        Assert.Equal("cut", TryPlanner.Best(question with { WaitingHourInMinutes = 60 }).Best.Id);
    }

    [Fact]
    public void A_rung_out_of_the_question_is_not_offered()
    {
        var question = Known(("heat", 0.60, 0.50), ("drill", 1.0, 3.0)) with { Forbidden = ["heat"] };
        var answer = TryPlanner.Best(question);
        Assert.Equal(["drill"], answer.Options.Select(option => option.Rung.Id));
    }

    private static NextTryQuestion Known(params (string Id, double Chance, double Hours)[] rungs) =>
        Of([.. rungs.Select(rung => new Rung
        {
            Id = rung.Id,
            Says = rung.Id,
            Takes = new((decimal)rung.Hours * 60),
            Odds = Enumerable.Repeat(rung.Chance, SeizureModel.Levels).ToValueList(),
        })]);

    private static NextTryQuestion Of(ValueList<Rung> rungs) => new()
    {
        Ladders = new Dictionary<JointCondition, Ladder>
        { [JointCondition.Sound] = new() { Id = "test", Name = "Test", Rungs = rungs, Origin = "made up" } },
        Belief = [0.2, 0.2, 0.2, 0.2, 0.2],
    };
}
