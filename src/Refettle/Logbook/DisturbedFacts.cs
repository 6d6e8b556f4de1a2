namespace Refettle.Logbook;

/// <summary>What was ever undone while a log is folded, and what was seen to since.</summary>
internal sealed class DisturbedFacts
{
    private readonly Dictionary<Fact, SortedSet<string>> _since = [];

    /// <summary>It holds from now on.</summary>
    public void Begin(Fact fact) => _since[fact] = new(StringComparer.Ordinal);

    public void Forget(Fact fact) => _since.Remove(fact);

    /// <summary>Notes it for everything that it counts for, or takes that back for all.</summary>
    public void See(string what, bool isSeen, Func<Fact, bool> counts)
    {
        foreach (var (fact, since) in _since)
            _ = isSeen ? counts(fact) && since.Add(what) : since.Remove(what);
    }

    /// <summary>Notes it for one of them, or takes that back.</summary>
    public void See(Fact fact, string what, bool isSeen)
    {
        if (_since.TryGetValue(fact, out var since))
            _ = isSeen ? since.Add(what) : since.Remove(what);
    }

    /// <summary>In order, without what the car no longer has.</summary>
    public ValueList<Disturbed> Of(Structure structure)
    {
        var known = structure.Parts.Select(part => Fact.Off(part.Id)).Concat(structure.Joints.Select(joint => Fact.Open(joint.Id))).Concat(structure.States.Select(state => Fact.State(state.Id)));
        return known.Where(_since.ContainsKey).Order().Select(fact => new Disturbed(fact, [.. _since[fact]])).ToValueList();
    }
}
