namespace Refettle.Checks;

/// <summary>Which facts wait for which: a fact holds by any one of its ways, a way needs all of its facts.</summary>
/// <remarks>Facts that are at fault for another reason (nothing describes them, no way, a fixed part) count as given,
/// so that what is left over waits in circles only.</remarks>
internal sealed class SupportGraph
{
    private readonly Dictionary<Fact, int> _number = [];
    private readonly List<Fact> _facts = [];
    private readonly List<List<int>> _waysOf = [];
    private readonly List<List<int>> _neededBy = [];
    private readonly List<int[]> _needs = [];
    private readonly List<int> _missing = [];
    private readonly List<int> _factOf = [];
    private readonly List<bool> _holds = [];
    private readonly Queue<int> _ready = new();

    public SupportGraph(Structure structure, Names names)
    {
        AddParts(structure, names);
        foreach (var joint in structure.Joints)
        {
            foreach (var way in joint.Ways)
                Way(Fact.Open(joint.Id), way.Where == WorkPlace.OnBench ? [.. way.Clear, .. joint.Holds.Select(Fact.Off)] : way.Clear);
        }

        foreach (var state in structure.States)
        {
            foreach (var way in state.Ways)
                Way(Fact.State(state.Id), way.Clear);
        }

        foreach (var space in structure.Spaces)
            Way(Fact.Reach(space.Id), space.ClosedBy.Select(Fact.Off));
        for (var fact = 0; fact < _facts.Count; fact++)
        {
            if (_waysOf[fact].Count == 0)
                Grant(fact);
        }
    }

    public Fact this[int fact] => _facts[fact];

    /// <summary>Takes a fact for true from now on.</summary>
    public void Grant(int fact)
    {
        if (_holds[fact])
            return;
        _holds[fact] = true;
        _ready.Enqueue(fact);
    }

    /// <summary>Derives all that follows; returns the facts that cannot be derived, in their order of names.</summary>
    public int[] Underivable()
    {
        while (_ready.TryDequeue(out var fact))
        {
            foreach (var way in _neededBy[fact])
            {
                if (--_missing[way] == 0)
                    Grant(_factOf[way]);
            }
        }

        return [.. Enumerable.Range(0, _facts.Count).Where(fact => !_holds[fact]).OrderBy(fact => _facts[fact])];
    }

    /// <summary>The facts that a fact waits for and that do not hold.</summary>
    public IEnumerable<int> WaitsFor(int fact) =>
        _waysOf[fact].SelectMany(way => _needs[way]).Where(need => !_holds[need]).Distinct().OrderBy(need => _facts[need]);

    private void AddParts(Structure structure, Names names)
    {
        var jointsOf = structure.Joints.SelectMany(joint => joint.Holds.Distinct(), (joint, part) => (part, joint))
            .ToLookup(pair => pair.part, pair => pair.joint);
        foreach (var part in structure.Parts.Where(part => !part.Fixed))
        {
            var open = jointsOf[part.Id].Select(joint => Fact.Open(joint.Id)).ToArray();
            Way(Fact.Off(part.Id), [.. open, .. part.Out.Clear]);
            Way(Fact.Free(part.Id), [.. open, Fact.Off(part.Id)]);
        }

        foreach (var unit in structure.SubAssemblies.Where(unit => !names.IsFixedUnit(unit.Id)))
            AddUnit(unit, jointsOf);
    }

    private void AddUnit(SubAssembly unit, ILookup<string, Joint> jointsOf)
    {
        var members = unit.Members.ToHashSet();
        var boundary = members.SelectMany(part => jointsOf[part]).Where(joint => !joint.Holds.All(members.Contains));
        Way(Fact.Off(unit.Id), [.. boundary.Select(joint => Fact.Open(joint.Id)), .. unit.Out.Clear]);
        foreach (var part in members)
            Way(Fact.Off(part), [Fact.Off(unit.Id)]);
    }

    private void Way(Fact fact, IEnumerable<Fact> clear)
    {
        var way = _needs.Count;
        int[] needs = [.. clear.Distinct().Select(Number)];
        _needs.Add(needs);
        _missing.Add(needs.Length);
        _factOf.Add(Number(fact));
        _waysOf[_factOf[way]].Add(way);
        foreach (var need in needs)
            _neededBy[need].Add(way);
        if (needs.Length == 0)
            Grant(_factOf[way]);
    }

    private int Number(Fact fact)
    {
        if (_number.TryGetValue(fact, out var number))
            return number;
        _number.Add(fact, number = _facts.Count);
        _facts.Add(fact);
        _waysOf.Add([]);
        _neededBy.Add([]);
        _holds.Add(false);
        return number;
    }
}
