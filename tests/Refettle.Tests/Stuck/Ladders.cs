using Refettle.Stuck;

namespace Refettle.Tests.Stuck;

/// <summary>Random ladders, and the least expected cost by plain recursion over every policy, without memory and level by level.</summary>
internal static class Ladders
{
    public static NextTryQuestion Random(int seed)
    {
        var random = new Random(seed);
        var snapped = new Ladder
        {
            Id = "snapped",
            Name = "Snapped",
            Condition = JointCondition.SnappedFlush,
            Rungs = Rungs(random, 2, harm: false),
            Origin = "made up"
        };
        var sound = new Ladder { Id = "sound", Name = "Sound", Rungs = Rungs(random, 3, harm: true), Origin = "made up" };
        return new()
        {
            Ladders = new Dictionary<JointCondition, Ladder> { [JointCondition.Sound] = sound, [JointCondition.SnappedFlush] = snapped },
            Belief = Normal(random),
            IsSoaked = random.Next(3) == 0,
            WaitingHourInMinutes = random.Next(2) * 5,
        };
    }

    public static double LeastOverAllPolicies(NextTryQuestion question) =>
        Least(question, JointCondition.Sound, [.. question.Belief], [], question.IsSoaked);

    /// <param name="weights">Unnormalised chances of the levels on this path: the value is the expected cost times their sum.</param>
    private static double Least(NextTryQuestion question, JointCondition condition, double[] weights, string[] tried, bool isSoaked)
    {
        if (weights.Sum() <= 0)
            return 0;
        return question.Ladders[condition].Rungs.Where(rung => !tried.Contains(rung.Id)).Min(rung =>
        {
            var cost = weights.Sum() * ((double)rung.Takes.Value + ((double)rung.Waits.Value / 60 * question.WaitingHourInMinutes)
                + ((double)rung.Spends.Amount / (double)question.PerHour.Amount * 60));
            var odds = isSoaked ? rung.OddsSoaked ?? rung.Odds : rung.Odds;
            double[] held =
                [.. weights.Select((weight, level) => weight * (1 - odds[level] - rung.Mishaps.Sum(mishap => mishap.Odds[level])))];
            foreach (var mishap in rung.Mishaps)
                cost += Least(question, mishap.Becomes, [.. weights.Select((weight, level) => weight * mishap.Odds[level])], [], isSoaked);
            return rung.IsSure ? cost : cost + Least(question, condition, held, [.. tried, rung.Id], isSoaked || rung.IsSoak);
        });
    }

    private static ValueList<Rung> Rungs(Random random, int count, bool harm) =>
    [
        .. Enumerable.Range(0, count).Select(number => RungOf(random, $"r{number}", harm)),
        new() { Id = "sure", Says = "Cut", Takes = new(random.Next(40, 120)), Odds = [1, 1, 1, 1, 1], Spends = new(random.Next(30)) },
    ];

    private static Rung RungOf(Random random, string id, bool harm) => new()
    {
        Id = id,
        Says = id,
        Takes = new(random.Next(1, 40)),
        Waits = new(random.Next(2) * 60),
        IsSoak = random.Next(3) == 0,
        Odds = Falling(random, 0.7),
        OddsSoaked = random.Next(2) == 0 ? Falling(random, 0.8) : null,
        Mishaps = harm && random.Next(2) == 0 ? [new(JointCondition.SnappedFlush, Falling(random, 0.2))] : [],
    };

    private static ValueList<double> Falling(Random random, double most) =>
        Enumerable.Range(0, SeizureModel.Levels).Select(_ => random.NextDouble() * most).OrderDescending().ToValueList();

    private static double[] Normal(Random random)
    {
        var values = Enumerable.Range(0, SeizureModel.Levels).Select(_ => random.NextDouble()).ToArray();
        return Array.ConvertAll(values, value => value / values.Sum());
    }
}
