namespace Refettle.Stuck;

/// <summary>Finds the best order of tries for one joint, exactly: the least expected minutes over all policies.</summary>
/// <remarks>
/// A joint's level does not change, so what is believed after a row of failures depends only on which rungs failed, and which of them
/// dry. That makes the states few: for each rung untried, failed dry, failed soaked. Where nothing can go wrong, nothing soaks and the
/// level is known, the answer is the ratio rule: in decreasing chance over cost (Mitten, An analytic solution to the least cost testing
/// sequence problem, J. Industrial Engineering 11 (1960)).
/// </remarks>
public static class TryPlanner
{
    /// <exception cref="ArgumentException">A ladder that can be needed is missing, or has no sure rung that is admissible.</exception>
    public static NextTryAnswer Best(NextTryQuestion question)
    {
        var ladder = new Climb(question, question.Condition);
        return ladder.Answer(question.Belief, question.IsSoaked, question.Tried);
    }

    private sealed class Climb
    {
        private readonly NextTryQuestion _question;
        private readonly Rung[] _rungs;
        private readonly Dictionary<(uint Dry, uint Soaked, bool IsSoaked), double> _known = [];
        private readonly Dictionary<JointCondition, Climb> _below = [];

        public Climb(NextTryQuestion question, JointCondition condition)
        {
            _question = question;
            if (!question.Ladders.TryGetValue(condition, out var ladder))
                throw new ArgumentException($"There is no ladder for a joint that is {condition}.");
            _rungs = [.. ladder.Rungs.Where(rung => !question.Forbidden.Contains(rung.Id))];
            if (_rungs.SelectMany(rung => rung.Mishaps).Any(mishap => mishap.Becomes <= condition))
                throw new ArgumentException($"Ladder {ladder.Id} has a mishap that leads back: a joint only gets worse.");
            if (!_rungs.Any(rung => rung.IsSure))
                throw new ArgumentException($"Ladder {ladder.Id} has no sure rung that is allowed.");
        }

        public NextTryAnswer Answer(double[] belief, bool isSoaked, ValueList<string> tried)
        {
            var dry = Mask(tried);
            var options = Options(belief, dry, 0, isSoaked).OrderBy(option => option.ExpectedMinutes).ThenBy(option => option.Rung.Id).ToValueList();
            return new(options[0].Rung, options[0].ExpectedMinutes, options, Row(belief, dry, isSoaked));
        }

        private uint Mask(ValueList<string> tried) =>
            _rungs.Select((rung, i) => tried.Contains(rung.Id) && !rung.IsSure ? 1u << i : 0).Aggregate(0u, (all, one) => all | one);

        private ValueList<string> Row(double[] belief, uint dry, bool isSoaked)
        {
            var row = new List<string>();
            var soaked = 0u;
            while (true)
            {
                var best = Options(belief, dry, soaked, isSoaked).MinBy(option => option.ExpectedMinutes)!.Rung;
                row.Add(best.Id);
                if (best.IsSure)
                    return row.ToValueList();
                belief = After(belief, level => best.HoldsAt(level, isSoaked));
                var bit = 1u << Array.IndexOf(_rungs, best);
                (dry, soaked, isSoaked) = isSoaked ? (dry, soaked | bit, true) : (dry | bit, soaked, best.IsSoak);
            }
        }

        private IEnumerable<TryOption> Options(double[] belief, uint dry, uint soaked, bool isSoaked)
        {
            for (var i = 0; i < _rungs.Length; i++)
            {
                if (((dry | soaked) & (1u << i)) == 0)
                    yield return Option(_rungs[i], 1u << i, belief, dry, soaked, isSoaked);
            }
        }

        private TryOption Option(Rung rung, uint bit, double[] belief, uint dry, uint soaked, bool isSoaked)
        {
            var minutes = Takes(rung);
            var frees = Chance(belief, level => rung.OddsAt(level, isSoaked));
            var harms = 0.0;
            foreach (var mishap in rung.Mishaps)
            {
                var chance = Chance(belief, level => mishap.Odds[level]);
                harms += chance;
                if (chance > 0)
                    minutes += chance * Below(mishap.Becomes).Least(After(belief, level => mishap.Odds[level]), 0, 0, isSoaked, remember: false);
            }

            var held = 1 - frees - harms;
            if (held > 1e-12)
            {
                var next = isSoaked ? (dry, soaked | bit, true) : (dry | bit, soaked, rung.IsSoak);
                minutes += held * Least(After(belief, level => rung.HoldsAt(level, isSoaked)), next.Item1, next.Item2, next.Item3, remember: true);
            }

            return new(rung, minutes, frees, harms);
        }

        // Beliefs of one climb differ only by what failed, which is the key; a climb entered by a mishap starts from many beliefs.
        private double Least(double[] belief, uint dry, uint soaked, bool isSoaked, bool remember)
        {
            if (remember && _known.TryGetValue((dry, soaked, isSoaked), out var known))
                return known;
            if (!remember)
                _known.Clear();
            var least = Options(belief, dry, soaked, isSoaked).Min(option => option.ExpectedMinutes);
            if (remember)
                _known[(dry, soaked, isSoaked)] = least;
            return least;
        }

        private Climb Below(JointCondition condition)
        {
            if (!_below.TryGetValue(condition, out var climb))
                _below.Add(condition, climb = new(_question, condition));
            return climb;
        }

        private double Takes(Rung rung) =>
            (double)rung.Takes.Value
            + (double)_question.ClearingFirst.GetValueOrDefault(rung.Id).Value
            + ((double)rung.Waits.Value / 60 * _question.WaitingHourInMinutes)
            + (double)(rung.Spends.Amount / _question.PerHour.Amount * 60);

        private static double Chance(double[] belief, Func<int, double> odds)
        {
            var chance = 0.0;
            for (var level = 0; level < belief.Length; level++)
                chance += belief[level] * odds(level);
            return chance;
        }

        private static double[] After(double[] belief, Func<int, double> likelihood)
        {
            var after = new double[belief.Length];
            var sum = 0.0;
            for (var level = 0; level < belief.Length; level++)
                sum += after[level] = belief[level] * Math.Max(0, likelihood(level));
            return sum <= 0 ? belief : Array.ConvertAll(after, value => value / sum);
        }
    }
}
