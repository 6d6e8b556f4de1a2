using Refettle.Stuck;

namespace Refettle.Tests.Stuck;

public sealed class SeizureBeliefTests
{
    private static readonly Rung Impact = new()
    {
        Id = "impact",
        Says = "Impact driver",
        Takes = new(5),
        Odds = [0.95, 0.8, 0.5, 0.2, 0.05],
        OddsSoaked = [0.97, 0.85, 0.6, 0.3, 0.1],
        Mishaps = [new(JointCondition.Rounded, [0.01, 0.02, 0.05, 0.1, 0.2])],
    };

    /// <summary>Against the definition: the sum over all 5 × 5² × 5³ combinations of grade, two zone
    /// levels and three joint levels.</summary>
    [Fact]
    public void The_posterior_agrees_with_direct_enumeration()
    {
        Attempt[] attempts =
        [
            new(new("a", "impact", null, false, null), Impact),
            new(new("a", "impact", JointCondition.Freed, true, null), Impact),
            new(new("b", "impact", JointCondition.Rounded, false, null), Impact),
        ];
        var belief = new SeizureBelief(SeizureModel.CommonPractice, PlaceOf, attempts);
        foreach (var joint in new[] { "a", "b", "c" })
        {
            var expected = ByEnumeration(attempts, joint);
            Assert.All(belief.Joint(joint).Zip(expected), pair => Assert.Equal(pair.Second, pair.First, 12));
        }

        Assert.All(belief.CarGrade().Zip(ByEnumeration(attempts, joint: null)), pair => Assert.Equal(pair.Second, pair.First, 12));
    }

    [Fact]
    public void A_bolt_that_held_darkens_its_zone_more_than_another()
    {
        var before = new SeizureBelief(SeizureModel.CommonPractice, PlaceOf, []);
        var after = new SeizureBelief(SeizureModel.CommonPractice, PlaceOf, [new(new("a", "impact", null, false, null), Impact)]);
        var (same, other) = (Mean(after.Joint("b")) - Mean(before.Joint("b")), Mean(after.Joint("c")) - Mean(before.Joint("c")));
        Assert.True(same > other && other > 0, $"{same} against {other}");
    }

    private static (string, int) PlaceOf(string joint) => joint == "c" ? ("front", 2) : ("rear", 4);

    private static double Mean(double[] levels) => levels.Select((chance, level) => chance * level).Sum();

    private static double[] ByEnumeration(Attempt[] attempts, string? joint)
    {
        var model = SeizureModel.CommonPractice;
        var result = new double[5];
        for (var code = 0; code < 15_625; code++)
        {
            var digits = Enumerable.Range(0, 6).Select(place => code / (int)Math.Pow(5, place) % 5).ToArray();
            var (grade, rear, front, a, b, c) = (digits[0], digits[1], digits[2], digits[3], digits[4], digits[5]);
            var chance = model.CarGrades[grade] * model.ZoneLevels(grade, 4)[rear] * model.ZoneLevels(grade, 2)[front]
                * model.JointLevels(rear)[a] * model.JointLevels(rear)[b] * model.JointLevels(front)[c];
            foreach (var attempt in attempts)
                chance *= attempt.Likelihood(attempt.Try.Joint == "a" ? a : attempt.Try.Joint == "b" ? b : c);
            result[joint switch { "a" => a, "b" => b, "c" => c, _ => grade }] += chance;
        }

        return Array.ConvertAll(result, value => value / result.Sum());
    }
}
