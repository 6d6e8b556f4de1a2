namespace Refettle.Logbook;

/// <summary>What was ever undone while a log is folded, and what was seen to since.</summary>
internal sealed class DisturbedFacts
{
    private readonly Dictionary<Fact, SortedSet<string>> _since = [];
    private readonly HashSet<Fact> _closed = [];

    /// <summary>It holds from now on.</summary>
    public void Begin(Fact fact)
    {
        _closed.Remove(fact);
        _since[fact] = new(StringComparer.Ordinal);
    }

    /// <summary>A joint is closed: from now on checks count for it.</summary>
    public void Close(Fact joint) => _closed.Add(joint);

    public void Forget(Fact fact)
    {
        _closed.Remove(fact);
        _since.Remove(fact);
    }

    /// <summary>A state was undone: filled brakes were bled.</summary>
    public void Undo(Fact state) => See(state.ToString(), isSeen: true, _closed.Contains);

    /// <summary>Checks that are done count for what is closed by then, handing in for all that is there.</summary>
    public void Mark(TaskMark mark)
    {
        if (mark.Task == Disturbed.HandIn)
            See(mark.Task, mark.Progress == TaskProgress.Done, _ => true);
        else if (mark.Task.StartsWith(Disturbed.Check, StringComparison.Ordinal))
            See(mark.Task, mark.Progress == TaskProgress.Done, _closed.Contains);
    }

    /// <summary>What is tightened is closed, whether that was said already or is said next.</summary>
    /// <param name="stance">The car's.</param>
    public void Tighten(JointTightened tightened, string? stance)
    {
        if (_since.TryGetValue(Fact.Open(tightened.Joint), out var since))
            _ = tightened.How.IsSettled(stance) ? since.Add(Disturbed.RideHeight) : since.Remove(Disturbed.RideHeight);
    }

    /// <summary>In order, without what the car no longer has.</summary>
    public ValueList<Disturbed> Of(Structure structure)
    {
        var known = structure.Parts.Select(part => Fact.Off(part.Id)).Concat(structure.Joints.Select(joint => Fact.Open(joint.Id)))
            .Concat(structure.States.Select(state => Fact.State(state.Id)));
        return known.Where(_since.ContainsKey).Order().Select(fact => new Disturbed(fact, [.. _since[fact]])).ToValueList();
    }

    /// <summary>Notes it for everything that it counts for, or takes that back for all.</summary>
    private void See(string what, bool isSeen, Func<Fact, bool> counts)
    {
        foreach (var (fact, since) in _since)
            _ = isSeen ? counts(fact) && since.Add(what) : since.Remove(what);
    }
}
