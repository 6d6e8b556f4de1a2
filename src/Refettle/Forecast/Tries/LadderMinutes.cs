using Refettle.Stuck;

namespace Refettle.Forecast.Tries;

/// <summary>What tries at a joint come to, in working minutes, for each seizure level: all ways the ladder can go, each with its chance.</summary>
/// <remarks>Soaking time and what must be cleared first are other activities'; money is left out.</remarks>
internal sealed class LadderMinutes
{
    private const double Negligible = 1e-6;

    private readonly IReadOnlyDictionary<JointCondition, Ladder> _ladders;
    private readonly Money _perHour;
    private readonly List<(double Minutes, double[] Chances)> _ends = [];

    private LadderMinutes(IReadOnlyDictionary<JointCondition, Ladder> ladders, Money perHour) => (_ladders, _perHour) = (ladders, perHour);

    /// <summary>The whole ladder, the best try at every turn.</summary>
    /// <returns>For each level its outcomes.</returns>
    public static ValueList<ValueList<DurationChance>> Whole(NextTryQuestion question)
    {
        var walk = new LadderMinutes(question.Ladders, question.PerHour);
        walk.Best(question.Condition, question.Belief, question.IsSoaked, question.Tried, 0, Ones());
        return walk.Outcomes();
    }

    /// <summary>A row of tries, done one after the other while the joint holds.</summary>
    /// <param name="question">The joint; its condition, belief and soak are those before the first of the row.</param>
    /// <param name="reached">For each level the chance that the row is begun at all; else it takes no time.</param>
    /// <param name="goesOn">Whether what still holds after the row is worked on at once by what is left of the ladder; else it ends there.</param>
    public static ValueList<ValueList<DurationChance>> Row(NextTryQuestion question, IReadOnlyList<Rung> row, double[] reached, bool goesOn)
    {
        var walk = new LadderMinutes(question.Ladders, question.PerHour);
        var (minutes, chances, belief) = walk.Try(question.Condition, question.Belief, question.IsSoaked, row, 0, [.. reached]);
        if (goesOn && row.All(rung => !rung.IsSure))
            walk.Best(question.Condition, belief, question.IsSoaked, [.. question.Tried, .. row.Select(rung => rung.Id)], minutes, chances);
        else
            walk._ends.Add((minutes, chances));
        walk._ends.Add((0, Array.ConvertAll(reached, chance => 1 - chance)));
        return walk.Outcomes();
    }

    /// <summary>For each level the chance that a row of tries leaves the joint holding.</summary>
    public static double[] Holds(IEnumerable<Rung> row, bool isSoaked) =>
        row.Aggregate(Ones(), (held, rung) => [.. held.Select((chance, level) => chance * Held(rung, level, isSoaked))]);

    private void Best(JointCondition condition, double[] belief, bool isSoaked, ValueList<string> tried, double minutes, double[] chances)
    {
        if (chances.Max() < Negligible)
            return;
        var best = TryPlanner.Best(new() { Ladders = _ladders, Condition = condition, Belief = belief, IsSoaked = isSoaked, Tried = tried, PerHour = _perHour });
        Try(condition, belief, isSoaked, [.. best.IfHeld.Select(id => _ladders[condition].Rungs.First(rung => rung.Id == id))], minutes, chances);
    }

    private (double Minutes, double[] Chances, double[] Belief) Try(
        JointCondition condition, double[] belief, bool isSoaked, IReadOnlyList<Rung> row, double minutes, double[] chances)
    {
        foreach (var rung in row)
        {
            minutes += (double)rung.Takes.Value;
            _ends.Add((minutes, Times(chances, level => rung.OddsAt(level, isSoaked))));
            foreach (var mishap in rung.Mishaps)
                Best(mishap.Becomes, Normal(Times(belief, level => mishap.Odds[level])), isSoaked, [], minutes, Times(chances, level => mishap.Odds[level]));
            var soaked = isSoaked;
            chances = Times(chances, level => Held(rung, level, soaked));
            belief = Normal(Times(belief, level => Held(rung, level, soaked)));
            isSoaked |= rung.IsSoak;
        }

        return (minutes, chances, belief);
    }

    private ValueList<ValueList<DurationChance>> Outcomes() => Enumerable.Range(0, SeizureModel.Levels).Select(level =>
    {
        var all = _ends.Sum(end => end.Chances[level]);
        return _ends.Where(end => end.Chances[level] > Negligible).GroupBy(end => end.Minutes)
            .Select(group => new DurationChance(group.Key, group.Sum(end => end.Chances[level]) / all)).OrderBy(one => one.Duration).ToValueList();
    }).ToValueList();

    private static double Held(Rung rung, int level, bool isSoaked) =>
        Math.Max(0, 1 - rung.OddsAt(level, isSoaked) - rung.Mishaps.Sum(mishap => mishap.Odds[level]));

    private static double[] Ones() => [.. Enumerable.Repeat(1.0, SeizureModel.Levels)];

    private static double[] Times(double[] values, Func<int, double> factor) => [.. values.Select((value, level) => value * factor(level))];

    private static double[] Normal(double[] values) => values.Sum() is > 0 and var sum ? Array.ConvertAll(values, value => value / sum) : Array.ConvertAll(values, _ => 1.0 / values.Length);
}
