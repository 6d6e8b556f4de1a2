namespace Refettle.Stuck.OpenUp;

/// <summary>Looks for the one try whose outcome would change what to open.</summary>
internal static class Turnings
{
    /// <param name="question">The question.</param>
    /// <param name="cache">Its tables.</param>
    /// <param name="now">The answer without a further try.</param>
    /// <param name="weigh">Answers a changed question.</param>
    public static ValueList<Turning> Of(OpenUpQuestion question, TablesCache cache, Weighed now, Func<OpenUpQuestion, Weighed> weigh) =>
        now.Groups.Select(group => Try(question, cache, now, group, weigh)).OfType<Turning>()
            .OrderByDescending(turning => turning.Saves).ThenBy(turning => turning.Joint, StringComparer.Ordinal).ToValueList();

    private static Turning? Try(OpenUpQuestion question, TablesCache cache, Weighed now, Group group, Func<OpenUpQuestion, Weighed> weigh)
    {
        var joint = question.Joints.First(one => one.Id == group.Joints[0]);
        if (group.Tables.PassOf(0).Rungs.FirstOrDefault(rung => !rung.IsSoak) is not { } rung)
            return null;
        var (frees, holds) = (Odds(rung, joint, isFreed: true), Odds(rung, joint, isFreed: false));
        var freed = Seen(question, joint, frees) with { Joints = question.Joints.Where(other => other != joint).ToValueList() };
        var held = Seen(question, joint, holds) with
        { Joints = question.Joints.Select(other => other == joint ? Held(joint, rung, holds) : other).ToValueList() };
        var chance = joint.Belief.Zip(frees, (belief, odds) => belief * odds).Sum();
        var (ifFreed, ifHeld) = (freed.Joints.Count == 0 ? null : weigh(freed), weigh(held));
        var (first, second) = (ifFreed?.Advice(now.Best.First) ?? 0, ifHeld.Advice(now.Best.First));
        if (first == now.Best.First && second == now.Best.First)
            return null;
        var then = cache.MinutesOf(joint, rung) + (chance * (ifFreed?.Best.Total ?? 0)) + ((1 - chance) * ifHeld.Best.Total);
        return new(joint.Id, rung, chance, OpenUpPlanner.Names(question, first), OpenUpPlanner.Names(question, second),
            now.Best.Total - then);
    }

    private static double[] Odds(Rung rung, StuckJoint joint, bool isFreed) => [.. Enumerable.Range(0, SeizureModel.Levels)
        .Select(level => isFreed ? rung.OddsAt(level, joint.IsSoaked) : Math.Max(0, rung.HoldsAt(level, joint.IsSoaked)))];

    /// <summary>The question with an outcome taken in at the joint's place.</summary>
    private static OpenUpQuestion Seen(OpenUpQuestion question, StuckJoint joint, double[] odds)
    {
        double[] byPlace = [.. joint.Levels.Select(levels => levels.Zip(odds, (level, chance) => level * chance).Sum())];
        return question with
        {
            Places = question.Places.Select((place, number) => number != joint.Place ? place : place with
            {
                Levels = place.Levels.Select(levels => levels.Zip(byPlace, (level, chance) => level * chance).ToValueList()).ToValueList(),
            }).ToValueList(),
        };
    }

    private static StuckJoint Held(StuckJoint joint, Rung rung, double[] odds) => joint with
    {
        Tried = [.. joint.Tried, rung.Id],
        Levels = joint.Levels.Select(levels => Times(levels, odds)).ToValueList(),
        Belief = Times(joint.Belief, odds),
    };

    private static ValueList<double> Times(ValueList<double> levels, double[] odds)
    {
        double[] product = [.. levels.Zip(odds, (level, chance) => level * chance)];
        var sum = product.Sum();
        return sum > 0 ? product.Select(value => value / sum).ToValueList() : levels;
    }
}
