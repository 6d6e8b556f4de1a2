namespace Refettle.Stuck;

/// <summary>The ladders at hand.</summary>
/// <param name="Ladders">In order of preference: the first that fits a joint is used.</param>
public sealed record LadderSet(ValueList<Ladder> Ladders)
{
    /// <summary>For each condition the ladder for a kind of joint.</summary>
    public IReadOnlyDictionary<JointCondition, Ladder> For(JointKind kind) =>
        Ladders.Where(ladder => ladder.Kinds.Count == 0 || ladder.Kinds.Contains(kind))
            .GroupBy(ladder => ladder.Condition).ToDictionary(group => group.Key, group => group.First());

    /// <summary>A rung by its identifier, for a kind of joint; null when no ladder has it.</summary>
    public Rung? Rung(JointKind kind, string rung) =>
        For(kind).Values.SelectMany(ladder => ladder.Rungs).FirstOrDefault(candidate => candidate.Id == rung);

    /// <summary>All that is wrong with the set: chances out of range or order, mishaps that lead back or nowhere, no sure way.</summary>
    public ValueList<Fault> Check() =>
        Ladders.SelectMany(ladder => ladder.Rungs.SelectMany(rung => RungFaults(ladder, rung)).Concat(LadderFaults(ladder)))
        .ToValueList();

    private IEnumerable<Fault> LadderFaults(Ladder ladder)
    {
        if (!ladder.Rungs.Any(rung => rung.IsSure))
            yield return new($"ladder {ladder.Id}", "it has no sure rung", "End it with one whose odds are 1 at every level.");
        foreach (var mishap in ladder.Rungs.SelectMany(rung => rung.Mishaps).Select(mishap => mishap.Becomes).Distinct())
        {
            if (mishap <= ladder.Condition || mishap == JointCondition.Freed)
                yield return new($"ladder {ladder.Id}", $"a mishap leads to {mishap}", "A joint only gets worse.");
            else if (Ladders.All(other => other.Condition != mishap))
                yield return new($"ladder {ladder.Id}", $"a mishap leads to {mishap}, and no ladder goes on from there", "Add one.");
        }
    }

    private static IEnumerable<Fault> RungFaults(Ladder ladder, Rung rung)
    {
        var place = $"ladder {ladder.Id}, rung {rung.Id}";
        var rows = rung.Mishaps.Select(mishap => mishap.Odds).Prepend(rung.Odds).Concat(rung.OddsSoaked is null ? [] : [rung.OddsSoaked])
            .ToList();
        if (rows.Any(row => row.Count != SeizureModel.Levels || row.Any(odds => odds is < 0 or > 1)))
            yield return new(place, "chances are missing or not from 0 to 1", $"Give {SeizureModel.Levels} chances, for levels 0 to 4.");
        else if (Enumerable.Range(0, SeizureModel.Levels).Any(level => Worst(rung, level) > 1.000001))
            yield return new(place, "at some level its chances add up to more than 1", "Freed and mishaps together are at most 1.");
    }

    private static double Worst(Rung rung, int level) =>
        Math.Max(rung.Odds[level], rung.OddsSoaked?[level] ?? 0) + rung.Mishaps.Sum(mishap => mishap.Odds[level]);
}
