namespace Refettle.Kits;

/// <summary>Proposes which loose ends new parts can be tied to.</summary>
public static class Tying
{
    /// <param name="ends">The car's loose ends.</param>
    /// <param name="added">What is new on it.</param>
    /// <param name="choices">Parts by <c>kit/hole</c>; an empty text leaves that end loose.</param>
    public static ValueList<Tie> Propose(ValueList<LooseEnd> ends, Structure added, IReadOnlyDictionary<string, string> choices)
    {
        var ties = new List<Tie>();
        foreach (var end in ends)
        {
            var part = choices.TryGetValue(end.Key(), out var chosen) ? chosen
                : Candidates.Of(added, end.Role, end.Spot, end.Prefix).Best;
            if (!string.IsNullOrEmpty(part))
                ties.Add(new(end, part));
        }

        return ties.ToValueList();
    }

    /// <summary>What tying some loose ends of a car brings: the things that are new or changed, and the
    /// keys of the ends that are gone.</summary>
    public static Logbook.StructureAdded Carry(Structure car, string source, Structure added, ValueList<Tie> ties)
    {
        var draft = new Draft(car);
        draft.Add(added);
        foreach (var tie in ties)
            draft.Tie(tie);
        return new(source, draft.Added, ties.Select(tie => tie.End.Key()).ToValueList());
    }
}
