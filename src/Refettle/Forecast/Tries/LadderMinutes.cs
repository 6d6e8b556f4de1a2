using Refettle.Stuck;

namespace Refettle.Forecast.Tries;

/// <summary>What tries at a joint come to, in working minutes, for each seizure level: all ways the
/// ladder can go, each with its chance.</summary>
/// <remarks>Soaking time and what must be cleared first are other activities'; money is left out.</remarks>
internal sealed class LadderMinutes
{
    private const double Negligible = 1e-6;

    private readonly IReadOnlyDictionary<JointCondition, Ladder> _ladders;
    private readonly Money _perHour;
    private readonly Dictionary<(JointCondition, bool), List<End>> _after = [];

    private LadderMinutes(IReadOnlyDictionary<JointCondition, Ladder> ladders, Money perHour) => (_ladders, _perHour) = (ladders, perHour);

    /// <summary>The whole ladder, the best try at every turn.</summary>
    /// <returns>For each level its outcomes.</returns>
    public static ValueList<ValueList<DurationChance>> Whole(NextTryQuestion question) =>
        Outcomes(new LadderMinutes(question.Ladders, question.PerHour)
            .Best(question.Condition, question.Belief, question.IsSoaked, question.Tried));

    /// <summary>A row of tries, done one after the other while the joint holds.</summary>
    /// <param name="question">The joint; its condition, belief and soak are those before the first of the row.</param>
    /// <param name="reached">For each level the chance that the row is begun at all; else it takes no time.</param>
    /// <param name="goesOn">Whether what still holds after the row is worked on at once by what is left
    /// of the ladder; else it ends there.</param>
    public static ValueList<ValueList<DurationChance>> Row(NextTryQuestion question, IReadOnlyList<Rung> row, double[] reached, bool goesOn)
    {
        var ladder = new LadderMinutes(question.Ladders, question.PerHour);
        var (ends, rest, belief) = ladder.Try(question.Belief, question.IsSoaked, row);
        if (goesOn && row.All(rung => !rung.IsSure))
            ends.AddRange(ladder.Best(question.Condition, belief, question.IsSoaked, [.. question.Tried, .. row.Select(rung => rung.Id)])
                .Select(end => end.Behind(rest)));
        else
            ends.Add(rest);
        return Outcomes([.. ends.Select(end => end.Behind(new(0, reached))), new(0, Array.ConvertAll(reached, chance => 1 - chance))]);
    }

    /// <summary>For each level the chance that a row of tries leaves the joint holding.</summary>
    public static double[] Holds(IEnumerable<Rung> row, bool isSoaked) =>
        row.Aggregate(Ones(), (held, rung) => [.. held.Select((chance, level) => chance * Held(rung, level, isSoaked))]);

    private List<End> Best(JointCondition condition, double[] belief, bool isSoaked, ValueList<string> tried)
    {
        var best = TryPlanner.Best(new()
        { Ladders = _ladders, Condition = condition, Belief = belief, IsSoaked = isSoaked, Tried = tried, PerHour = _perHour });
        return Try(belief, isSoaked, [.. best.IfHeld.Select(id => _ladders[condition].Rungs.First(rung => rung.Id == id))]).Ends;
    }

    // The row for a joint that has become worse is chosen once, by what is believed the first time:
    // it hardly differs later, and there would be one for every path.
    private List<End> After(JointCondition condition, double[] belief, bool isSoaked)
    {
        if (!_after.TryGetValue((condition, isSoaked), out var ends))
            _after.Add((condition, isSoaked), ends = Merged(Best(condition, belief, isSoaked, [])));
        return ends;
    }

    private (List<End> Ends, End Held, double[] Belief) Try(double[] belief, bool isSoaked, IReadOnlyList<Rung> row)
    {
        var (ends, rest) = (new List<End>(), new End(0, Ones()));
        foreach (var rung in row)
        {
            rest = rest with { Minutes = rest.Minutes + (double)rung.Takes.Value };
            ends.Add(rest with { Chances = Times(rest.Chances, level => rung.OddsAt(level, isSoaked)) });
            foreach (var mishap in rung.Mishaps.Where(mishap => mishap.Odds.Any(odds => odds > 0)))
            {
                var worse = rest with { Chances = Times(rest.Chances, level => mishap.Odds[level]) };
                ends.AddRange(After(mishap.Becomes, Normal(Times(belief, level => mishap.Odds[level])), isSoaked)
                    .Select(end => end.Behind(worse)));
            }

            rest = rest with { Chances = Times(rest.Chances, level => Held(rung, level, isSoaked)) };
            belief = Normal(Times(belief, level => Held(rung, level, isSoaked)));
            isSoaked |= rung.IsSoak;
        }

        return (ends, rest, belief);
    }

    private static List<End> Merged(IEnumerable<End> ends) =>
        [.. ends.Where(end => end.Chances.Max() > Negligible).GroupBy(end => end.Minutes)
        .Select(group => new End(group.Key,
            [.. Enumerable.Range(0, SeizureModel.Levels).Select(level => group.Sum(end => end.Chances[level]))]))];

    private static ValueList<ValueList<DurationChance>> Outcomes(List<End> ends)
    {
        var merged = Merged(ends);
        return Enumerable.Range(0, SeizureModel.Levels).Select(level =>
        {
            var all = merged.Sum(end => end.Chances[level]);
            return merged.Where(end => end.Chances[level] > Negligible)
                .Select(end => new DurationChance(end.Minutes, end.Chances[level] / all)).OrderBy(one => one.Duration).ToValueList();
        }).ToValueList();
    }

    /// <summary>Over after so many minutes, with this chance at each level.</summary>
    private readonly record struct End(double Minutes, double[] Chances)
    {
        public End Behind(End first)
        {
            var before = first.Chances;
            return new(first.Minutes + Minutes, Times(Chances, level => before[level]));
        }
    }

    private static double Held(Rung rung, int level, bool isSoaked) =>
        Math.Max(0, 1 - rung.OddsAt(level, isSoaked) - rung.Mishaps.Sum(mishap => mishap.Odds[level]));

    private static double[] Ones() => [.. Enumerable.Repeat(1.0, SeizureModel.Levels)];

    private static double[] Times(double[] values, Func<int, double> factor) => [.. values.Select((value, level) => value * factor(level))];

    private static double[] Normal(double[] values) =>
        values.Sum() is > 0 and var sum
            ? Array.ConvertAll(values, value => value / sum)
            : Array.ConvertAll(values, _ => 1.0 / values.Length);
}
