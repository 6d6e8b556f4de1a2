using Refettle.Stuck;
using Refettle.Stuck.OpenUp;

namespace Refettle.Tests.Stuck.OpenUp;

/// <summary>Small random questions: two or three joints in one or two places, up to three accesses that share steps.</summary>
internal static class RandomQuestions
{
    public static OpenUpQuestion Make(int seed, int joints = 0, int accesses = 0)
    {
        var random = new Random(seed);
        var places = 1 + random.Next(2);
        joints = joints > 0 ? joints : places == 1 ? 3 : 2;
        accesses = accesses > 0 ? accesses : 1 + random.Next(3);
        var kinds = Enumerable.Range(0, 2).Select(_ => Ladders(random)).ToList();
        return new()
        {
            Openings = Enumerable.Range(0, accesses).Select(number => new Opening($"a{number}", $"Access {number}", [], [0, number + 1]))
                .ToValueList(),
            Steps = Enumerable.Range(0, accesses + 1).Select(number => new OpeningStep($"Step {number}", new(random.Next(20, 250))))
                .ToValueList(),
            Later = new(new(random.Next(20)), 1 + random.NextDouble()),
            Grades = Chances(random),
            Places = Enumerable.Range(0, places).Select(number => new Place($"z{number}", 4, Table(random))).ToValueList(),
            Joints = Enumerable.Range(0, joints)
                .Select(number => JointOf(random, number, kinds[random.Next(2)], random.Next(places), accesses)).ToValueList(),
        };
    }

    private static StuckJoint JointOf(Random random, int number, Dictionary<JointCondition, Ladder> ladders, int place, int accesses) =>
        new()
        {
            Id = $"j{number}",
            Place = place,
            Levels = Table(random),
            Belief = Chances(random),
            Ladders = ladders,
            IsSoaked = random.Next(4) == 0,
            Needs = ladders.Values.SelectMany(ladder => ladder.Rungs).Select(rung => rung.Id).Where(_ => random.Next(2) > 0)
            .ToDictionary(rung => rung, _ => (ValueList<int>)[random.Next(accesses)]),
        };

    private static Dictionary<JointCondition, Ladder> Ladders(Random random) => new()
    {
        [JointCondition.Sound] = new()
        { Id = $"sound{random.Next()}", Name = "Sound", Rungs = Rungs(random, "s", 3, harm: true), Origin = "made up" },
        [JointCondition.SnappedFlush] = new()
        {
            Id = $"snapped{random.Next()}",
            Name = "Snapped",
            Condition = JointCondition.SnappedFlush,
            Rungs = Rungs(random, "b", 1, harm: false),
            Origin = "made up",
        },
    };

    private static ValueList<Rung> Rungs(Random random, string prefix, int count, bool harm) =>
    [
        .. Enumerable.Range(0, count).Select(number => new Rung
        {
            Id = $"{prefix}{number}",
            Says = "Try",
            Takes = new(random.Next(2, 30)),
            IsSoak = random.Next(4) == 0,
            Odds = Falling(random, 0.7),
            OddsSoaked = random.Next(2) == 0 ? Falling(random, 0.8) : null,
            Mishaps = harm && random.Next(2) == 0 ? [new(JointCondition.SnappedFlush, Falling(random, 0.2))] : [],
        }),
        new() { Id = $"{prefix}-cut", Says = "Cut", Takes = new(random.Next(40, 150)), Odds = [1, 1, 1, 1, 1],
            Spends = new(random.Next(20)) },
    ];

    private static ValueList<double> Falling(Random random, double most) =>
        Enumerable.Range(0, SeizureModel.Levels).Select(_ => random.NextDouble() * most).OrderDescending().ToValueList();

    private static ValueList<ValueList<double>> Table(Random random) =>
        Enumerable.Range(0, SeizureModel.Levels).Select(_ => Chances(random)).ToValueList();

    private static ValueList<double> Chances(Random random)
    {
        var values = Enumerable.Range(0, SeizureModel.Levels).Select(_ => random.NextDouble()).ToArray();
        return values.Select(value => value / values.Sum()).ToValueList();
    }
}
