namespace Refettle.Stuck;

/// <summary>Finds the best order of tries for one joint, exactly: the least expected minutes over all policies.</summary>
/// <remarks>
/// A joint's level does not change, so what is believed after a row of failures depends only on which rungs failed, and which of them
/// dry (<see cref="Climb"/>). Where nothing can go wrong, nothing soaks and the level is known, the answer is the ratio rule: in decreasing
/// chance over cost (Mitten, An analytic solution to the least cost testing sequence problem, J. Industrial Engineering 11 (1960)).
/// </remarks>
public static class TryPlanner
{
    /// <exception cref="ArgumentException">A ladder that can be needed is missing, or has no sure rung that is admissible.</exception>
    public static NextTryAnswer Best(NextTryQuestion question)
    {
        var (climb, belief) = (Climb.Of(question, question.Condition, []), new LevelWeights(question.Belief));
        var state = climb.After(question.Tried, question.IsSoaked);
        var options = climb.Rungs.Where(rung => !state.HasFailed(rung)).Select(rung => Option(climb, rung, belief, state))
            .OrderBy(option => option.ExpectedMinutes).ThenBy(option => option.Rung.Id).ToValueList();
        return new(options[0].Rung, options[0].ExpectedMinutes, options, Row(climb, belief, state).Select(rung => rung.Id).ToValueList());
    }

    /// <summary>The rungs in the order in which the best policy tries them while each one holds; the last is sure.</summary>
    internal static IEnumerable<Rung> Row(Climb climb, LevelWeights weights, State state)
    {
        for (var isSure = false; !isSure;)
        {
            var best = climb.Rungs[climb.Least(weights, state).Rung];
            yield return best.Rung;
            isSure = best.Rung.IsSure;
            var held = weights.Times(best.Holds(state.IsSoaked));
            (weights, state) = (held.Sum() > 0 ? held : weights, state.Without(best));
        }
    }

    private static TryOption Option(Climb climb, RungFigures rung, in LevelWeights belief, State state)
    {
        var odds = new LevelWeights(state.IsSoaked ? rung.Rung.OddsSoaked ?? rung.Rung.Odds : rung.Rung.Odds);
        return new(rung.Rung, climb.Minutes(rung, belief, state), belief.Dot(odds), Harms(rung, belief));
    }

    private static double Harms(RungFigures rung, in LevelWeights belief)
    {
        var harms = 0.0;
        foreach (var (odds, _) in rung.Mishaps)
            harms += belief.Dot(odds);
        return harms;
    }
}
