using Refettle.Forecast;
using Refettle.Forecast.Tries;
using Refettle.Stuck;
using Refettle.Tests.Stuck;

namespace Refettle.Tests.Forecast;

public sealed class TriesTests
{
    /// <summary>Ladders whose tries cost nothing but minutes.</summary>
    private static NextTryQuestion Question(int seed)
    {
        var question = Ladders.Random(seed);
        return question with
        {
            Ladders = question.Ladders.ToDictionary(pair => pair.Key, pair => pair.Value with
            {
                Rungs = pair.Value.Rungs.Select(rung => rung with { Spends = default }).ToValueList(),
            }),
            WaitingHourInMinutes = 0,
        };
    }

    private static double Mean(double[] belief, ValueList<ValueList<DurationChance>> outcomes) =>
        belief.Select((chance, level) => chance * outcomes[level].Sum(one => one.Chance * one.Duration)).Sum();

    /// <summary>On average the minutes are those of the planner's best policy, which is checked against
    /// every policy. After a mishap the row is not chosen anew for every path, so now and then they
    /// are a little more, never less.</summary>
    [Fact]
    public void A_whole_ladder_takes_what_the_planner_expects()
    {
        var same = 0;
        for (var seed = 0; seed < 200; seed++)
        {
            var question = Question(seed);
            var (least, mean) = (TryPlanner.Best(question).ExpectedMinutes, Mean(question.Belief, LadderMinutes.Whole(question)));
            Assert.InRange(mean, least - 1e-3, least * 1.03);
            same += Math.Abs(mean - least) < 1e-3 ? 1 : 0;
        }

        Assert.True(same > 120, $"{same} of 200 alike");
    }

    /// <summary>Against climbing the ladder try by try with dice, at one level.</summary>
    [Fact]
    public void Outcomes_are_those_of_climbing_with_dice()
    {
        const int level = 3;
        var question = Question(11) with { IsSoaked = false };
        var row = TryPlanner.Best(question).IfHeld.Select(id => question.Ladders[JointCondition.Sound].Rungs.Single(rung => rung.Id == id))
            .ToList();
        var mild = row.Take(1).ToList();
        var outcomes = LadderMinutes.Row(question, mild, [1, 1, 1, 0.4, 1], goesOn: false)[level];
        var random = new Random(5);
        var climbed = Enumerable.Range(0, 40_000).Select(_ => random.NextDouble() < 0.4 ? Climb(question, mild, level, random) : 0)
            .ToList();
        Sampled.Agrees(outcomes.Sum(one => one.Chance * one.Duration), climbed);
        foreach (var one in outcomes)
            Sampled.Agrees(one.Chance, climbed.Select(minutes => Math.Abs(minutes - one.Duration) < 1e-9 ? 1.0 : 0));
    }

    private static double Climb(NextTryQuestion question, List<Rung> row, int level, Random random)
    {
        var minutes = 0.0;
        foreach (var rung in row)
        {
            minutes += (double)rung.Takes.Value;
            var (dice, odds) = (random.NextDouble(), rung.Odds[level]);
            if (dice < odds)
                return minutes;
            foreach (var mishap in rung.Mishaps)
            {
                if (dice < (odds += mishap.Odds[level]))
                    return minutes
                        + Below(question, question.Belief.Select((chance, other) => chance * mishap.Odds[other]).ToArray(), level, random);
            }
        }

        return minutes;
    }

    private static double Below(NextTryQuestion question, double[] weights, int level, Random random)
    {
        var belief = weights.Select(weight => weight / weights.Sum()).ToArray();
        var ladder = question.Ladders[JointCondition.SnappedFlush];
        var row = TryPlanner.Best(question with { Condition = JointCondition.SnappedFlush, Belief = belief }).IfHeld;
        return Climb(question, [.. row.Select(id => ladder.Rungs.Single(rung => rung.Id == id))], level, random);
    }

    /// <summary>Grade, zone and joint drawn one under the other give each joint the posterior that is checked by enumeration.</summary>
    [Fact]
    public void Levels_drawn_one_under_the_other_are_the_posterior()
    {
        var rung = new Rung { Id = "impact", Says = "Impact driver", Odds = [0.95, 0.8, 0.5, 0.2, 0.05] };
        var belief = new SeizureBelief(SeizureModel.CommonPractice, joint => joint == "c" ? ("front", 2) : ("rear", 4),
            [new(new("a", "impact", null, false, null), rung), new(new("c", "impact", JointCondition.Freed, false, null), rung)]);
        foreach (var joint in new[] { "a", "b", "c" })
        {
            var rust = new RustLevels(belief);
            var by = rust.Of(joint,
                Enumerable.Range(0, 5).Select(level => new ValueList<DurationChance>[] { [new(level, 1)] }[0]).ToValueList());
            var (grade, zone) = (rust.Levels[0].Chances[0], rust.Levels[1].Chances);
            var posterior = belief.Joint(joint);
            for (var level = 0; level < 5; level++)
            {
                var chance = Enumerable.Range(0, 25)
                    .Sum(pair => grade[pair / 5] * zone[pair / 5][pair % 5] * by.Outcomes[pair % 5].Where(one => one.Duration == level)
                        .Sum(one => one.Chance));
                Assert.Equal(posterior[level], chance, 9);
            }
        }
    }

    /// <summary>Bolts of one zone are slow together: their sum varies more than that of bolts that do not know each other.</summary>
    [Fact]
    public void Tries_of_one_zone_vary_together()
    {
        HiddenLevel Zone(string id) => new(id, null, [[0.5, 0.5]]);
        static ByLevel Tries(string zone) => new(zone, [[new(10, 0.5), new(20, 0.5)], [new(100, 0.5), new(200, 0.5)]]);
        var together = new Net().Add("a", Tries("z")).Add("b", Tries("z"), "a").Ask() with { Levels = [Zone("z")] };
        var apart = new Net().Add("a", Tries("y")).Add("b", Tries("z"), "a").Ask() with { Levels = [Zone("y"), Zone("z")] };

        // One bolt: mean 82.5, variance between levels 67.5², inside them on average (5² + 50²)/2.
        const double between = 67.5 * 67.5, inside = (25.0 + 2500) / 2;
        Sampled.Agrees(165, Net.Finishes(together).Select(finish => (double)finish));
        Sampled.Agrees(4 * between + 2 * inside, Net.Finishes(together).Select(finish => Math.Pow(finish - 165, 2)));
        Sampled.Agrees(2 * between + 2 * inside, Net.Finishes(apart).Select(finish => Math.Pow(finish - 165, 2)));
    }
}
