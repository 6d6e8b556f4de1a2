using Refettle.Stuck;
using Refettle.Stuck.OpenUp;

namespace Refettle.Tests.Stuck.OpenUp;

public sealed class OpenUpPlannerTests
{
    /// <summary>Against the whole decision tree, enumerated without any reduction, on 240 small cases.</summary>
    [Fact]
    public void The_advice_agrees_with_the_whole_decision_tree()
    {
        var (opens, tries) = (0, 0);
        for (var seed = 0; seed < 240; seed++)
        {
            var question = RandomQuestions.Make(seed);
            var answer = OpenUpPlanner.Best(question, () => new(seed));
            var tree = new DecisionTree(question).All();
            Assert.Equal(tree.Values.Min(), answer.Best.ExpectedMinutes, 6);
            Assert.Equal(tree[0], answer.TryFirst.ExpectedMinutes, 6);
            foreach (var choice in answer.Choices)
                Assert.Equal(tree[Mask(question, choice)], choice.ExpectedMinutes, 6);
            _ = answer.Best.Open.Count > 0 ? opens++ : tries++;
        }

        Assert.True(opens > 40 && tries > 40, $"{opens} open, {tries} try first");
    }

    /// <summary>Following the advice on drawn cars takes what it says, within 4.5 standard errors.</summary>
    [Theory]
    [InlineData(3)]
    [InlineData(11)]
    [InlineData(27)]
    [InlineData(60)]
    public void Following_the_advice_takes_what_it_says(int seed)
    {
        var question = RandomQuestions.Make(seed);
        var answer = OpenUpPlanner.Best(question, () => new(seed));
        foreach (var choice in new[] { answer.Best, answer.TryFirst })
        {
            var (mean, error) = new Mechanic(question, new(seed)).Mean(Mask(question, choice), 20_000);
            Assert.InRange(choice.ExpectedMinutes, mean - (4.5 * error), mean + (4.5 * error));
        }
    }

    /// <summary>A sampled figure agrees with the exact one within 4.5 standard errors.</summary>
    [Fact]
    public void Outcomes_drawn_by_chance_agree_with_all_of_them()
    {
        for (var seed = 0; seed < 40; seed++)
        {
            var question = RandomQuestions.Make(seed);
            var (cache, beliefs, random) = (new TablesCache(question), new Beliefs(question), new Random(seed));
            var groups = Group.Of(question, cache);
            var ahead = new Outlook(0, groups, beliefs, beliefs.Now(), cache.Opening);
            var exact = ahead.Exact();
            var sampled = new Race(() => Scenario.Draw(beliefs, groups, random), 4096).Run([ahead])[0].Later;
            Assert.Equal(exact.Minutes, sampled.Minutes, 4.5 / 1.96 * sampled.HalfWidth + 1e-6);
            Assert.Equal(exact.Opens, sampled.Opens, 0.05);
        }
    }

    /// <summary>What comes first among drawn cars is, gone through exactly, as good as the best but
    /// for a few minutes in a hundred.</summary>
    [Fact]
    public void The_first_of_a_race_is_as_good_as_the_best()
    {
        for (var seed = 0; seed < 60; seed++)
        {
            var question = RandomQuestions.Make(seed);
            var (cache, beliefs, random) = (new TablesCache(question), new Beliefs(question), new Random(seed));
            var groups = Group.Of(question, cache);
            var outlooks = Bits.Subsets((1 << question.Openings.Count) - 1)
                .Select(first => new Outlook(first, groups, beliefs, beliefs.Now(), cache.Opening)).ToList();
            var ended = new Race(() => Scenario.Draw(beliefs, groups, random), 1024).Run(outlooks);
            var exact = outlooks.ToDictionary(ahead => ahead.First, ahead => ahead.Certain + ahead.Exact().Minutes);
            Assert.InRange(exact[ended.MinBy(one => one.Total)!.First], exact.Values.Min(), (1.03 * exact.Values.Min()) + 1e-6);
            Assert.All(ended.Where(one => one.IsDearer), one => Assert.True(exact[one.First] > exact.Values.Min()));
        }
    }

    [Fact]
    public void More_accesses_than_are_weighed_one_by_one_are_sampled_and_say_so()
    {
        var question = RandomQuestions.Make(5, joints: 3, accesses: 2);
        var exact = OpenUpPlanner.Best(question, () => new(5));
        var sampled = OpenUpPlanner.Best(WithIdleOpenings(question), () => new(5));
        Assert.True(sampled.TryFirst.Uncertainty > 0 && exact.TryFirst.Uncertainty == 0);
        Assert.Equal(exact.TryFirst.ExpectedMinutes, sampled.TryFirst.ExpectedMinutes, 4.5 / 1.96 * sampled.TryFirst.Uncertainty);
    }

    [Fact]
    public void The_odds_at_which_both_are_equal_split_the_choice()
    {
        var splits = 0;
        for (var seed = 0; seed < 200; seed++)
        {
            var answer = OpenUpPlanner.Best(RandomQuestions.Make(seed), () => new(seed));
            if (answer.BreakEven is not { } even)
                continue;
            splits++;
            Assert.Equal(answer.Best.Open.Count > 0, answer.OpensLater > even);
        }

        Assert.True(splits > 20, $"{splits}");
    }

    [Fact]
    public void Opening_that_costs_nothing_is_done_at_once_and_dearer_later_opening_never_helps()
    {
        for (var seed = 0; seed < 60; seed++)
        {
            var question = RandomQuestions.Make(seed);
            var dear = question with { Later = new(question.Later.Once + new Minutes(30), question.Later.Factor + 1) };
            var (now, then) = (OpenUpPlanner.Best(question, () => new(1)), OpenUpPlanner.Best(dear, () => new(1)));
            Assert.True(then.Best.ExpectedMinutes >= now.Best.ExpectedMinutes - 1e-6);
        }
    }

    [Fact]
    public void A_joint_that_nothing_frees_for_sure_is_told()
    {
        var question = RandomQuestions.Make(1);
        var first = question.Joints[0];
        var stuck = first with
        { Forbidden = first.Ladders[JointCondition.Sound].Rungs.Where(rung => rung.IsSure).Select(rung => rung.Id).ToValueList() };
        Assert.Contains(OpenUpCheck.Of(question with { Joints = [stuck, .. question.Joints.Skip(1)] }),
            fault => fault.Place == $"joint {first.Id}");
        Assert.Empty(OpenUpCheck.Of(question));
    }

    internal static int Mask(OpenUpQuestion question, Choice choice) =>
        question.Openings.Select((access, number) => choice.Open.Contains(access.Id) ? 1 << number : 0).Sum();

    /// <summary>Ever more accesses that cost nothing and serve nothing.</summary>
    private static OpenUpQuestion WithIdleOpenings(OpenUpQuestion question)
    {
        var free = question.Steps.Count;
        var extra = Enumerable.Range(0, 9).Select(number => new Opening($"idle{number}", "Idle", [], [free])).ToList();
        var joints = question.Joints.Select((joint, number) => joint with
        {
            Needs = joint.Needs
                .Append(new("nothing", Enumerable.Range(0, 3).Select(one => question.Openings.Count + (number * 3) + one).ToValueList()))
                .ToDictionary(need => need.Key, need => need.Value),
        });
        return question with
        {
            Openings = [.. question.Openings, .. extra],
            Steps = [.. question.Steps, new("Nothing", Minutes.Zero)],
            Joints = joints.ToValueList(),
        };
    }
}
