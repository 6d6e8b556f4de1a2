namespace Refettle.Logbook;

/// <summary>Which work has been done, while a log is folded. Kept are parts off, joints open, states and the stance; what follows from them
/// by definition (a part free, a space open, a sub-assembly off) is worked out at the end.</summary>
internal sealed class WorkDone
{
    private readonly HashSet<string> _off = [];
    private readonly HashSet<string> _open = [];
    private readonly HashSet<string> _states = [];

    /// <summary>The stance last taken; null while none was.</summary>
    public string? Stance { get; private set; }

    /// <summary>How often something became so or was taken back: a mark that leaves this as it was changed nothing.</summary>
    public int Changes { get; private set; }

    /// <summary>All that was ever undone.</summary>
    public DisturbedFacts Disturbed { get; } = new();

    /// <summary>The work that a car says was done.</summary>
    public static WorkDone From(Car car)
    {
        var work = new WorkDone { Stance = car.Stance };
        foreach (var fact in car.Done)
        {
            _ = fact.Kind switch
            {
                FactKind.Off => work._off.Add(fact.Subject),
                FactKind.Open => work._open.Add(fact.Subject),
                _ => fact.Kind == FactKind.State && work._states.Add(fact.Subject),
            };
        }

        return work;
    }

    /// <returns>Why it does not fit; null when it does.</returns>
    public string? Do(Fact fact, StructureBuilder car) => fact.Kind switch
    {
        FactKind.Off => Unknown(fact, car) ?? TakeOff(Members(fact.Subject, car), car),
        FactKind.Free => Unknown(fact, car) ?? Free(fact.Subject, car),
        FactKind.Open => Unknown(fact, car) ?? Add(_open, fact),
        FactKind.Reach => Unknown(fact, car) ?? TakeOff(car.Spaces[fact.Subject].ClosedBy.SelectMany(unit => Members(unit, car)), car),
        _ => Unknown(fact, car) ?? (car.States[fact.Subject].IsStance ? Take(fact.Subject, car) : Add(_states, fact)),
    };

    /// <returns>Why it does not fit; null when it does.</returns>
    public string? Reverse(Fact fact, StructureBuilder car) => Unknown(fact, car) ?? fact.Kind switch
    {
        FactKind.Off => PutOn(fact.Subject, car),
        FactKind.Open => Close(fact.Subject, car),
        FactKind.State when car.States[fact.Subject].IsStance => "a stance is not taken back; say which stance the car is in now",
        FactKind.State => Undo(fact),
        _ => $"{fact} follows from other facts; say which joint was closed or which part was put back",
    };

    public string? Take(string stance, StructureBuilder car)
    {
        if (!car.States.TryGetValue(stance, out var state) || !state.IsStance)
            return $"the car has no stance {stance}";
        if (Stance != stance)
            Changes++;
        Stance = stance;
        return null;
    }

    public void Forget(IEnumerable<Thing> gone)
    {
        foreach (var thing in gone)
        {
            switch (thing.Kind)
            {
                case ThingKind.Part:
                    Forget(_off, Fact.Off(thing.Id));
                    break;
                case ThingKind.Joint:
                    Forget(_open, Fact.Open(thing.Id));
                    break;
                case ThingKind.State:
                    Forget(_states, Fact.State(thing.Id));
                    break;
            }
        }
    }

    /// <summary>All facts that hold, in order.</summary>
    public ValueList<Fact> Facts(Structure structure) => FactsThatHold.Of(structure, _off, _open, _states);

    private string? TakeOff(IEnumerable<string> parts, StructureBuilder car)
    {
        var leaving = parts.Where(car.Parts.ContainsKey).ToList();
        if (leaving.Find(part => car.Parts[part].Fixed) is { } anchored)
            return $"part {anchored} is what the rest hangs on and never comes off";
        foreach (var part in leaving)
            Add(_off, Fact.Off(part));
        LetGo(leaving, car);
        return null;
    }

    private string? Free(string part, StructureBuilder car)
    {
        if (TakeOff([part], car) is { } refusal)
            return refusal;
        foreach (var joint in car.JointsOf(part))
            Add(_open, Fact.Open(joint));
        return null;
    }

    /// <summary>What joins a part that is off to one that is not must be open. It stays recorded as open when the part is put back:
    /// fitted is not yet fastened.</summary>
    private void LetGo(IReadOnlyList<string> parts, StructureBuilder car)
    {
        foreach (var part in parts)
        {
            foreach (var joint in car.JointsOf(part))
            {
                if (HoldsOn(car.Joints[joint], car))
                    Add(_open, Fact.Open(joint));
            }
        }
    }

    /// <summary>Whether a part of the joint is still on the car.</summary>
    private bool HoldsOn(Joint joint, StructureBuilder car)
    {
        foreach (var part in joint.Holds.AsSpan())
        {
            if (!_off.Contains(part) && car.Parts.ContainsKey(part))
                return true;
        }

        return false;
    }

    private string? PutOn(string unit, StructureBuilder car)
    {
        var whole = car.SubAssemblies.TryGetValue(unit, out var group) ? Remainder.Of(group, car, _open) : [unit];
        var returning = whole.Where(_off.Contains).ToList();
        LetGo(returning, car);
        _off.ExceptWith(returning);
        Changes += returning.Count;
        return null;
    }

    private string? Close(string joint, StructureBuilder car)
    {
        var holds = car.Joints[joint].Holds.Where(car.Parts.ContainsKey).ToList();
        var off = holds.Find(_off.Contains);
        if (off is not null && holds.Find(part => !_off.Contains(part)) is { } on)
            return $"it cannot be closed: part {off} is off the car and part {on} is on it";
        if (_open.Remove(joint))
            Changes++;
        Disturbed.Close(Fact.Open(joint));
        return null;
    }

    private string? Undo(Fact state)
    {
        if (!_states.Remove(state.Subject))
            return null;
        Changes++;
        Disturbed.Undo(state);
        return null;
    }

    private static ValueList<string> Members(string unit, StructureBuilder car) =>
        car.SubAssemblies.TryGetValue(unit, out var group) ? group.Members : [unit];

    private static string? Unknown(Fact fact, StructureBuilder car) => fact.Kind switch
    {
        FactKind.Off when !car.Parts.ContainsKey(fact.Subject) && !car.SubAssemblies.ContainsKey(fact.Subject) =>
            $"the car has no part or sub-assembly {fact.Subject}",
        FactKind.Free when !car.Parts.ContainsKey(fact.Subject) => $"the car has no part {fact.Subject}",
        FactKind.Open when !car.Joints.ContainsKey(fact.Subject) => $"the car has no joint {fact.Subject}",
        FactKind.State when !car.States.ContainsKey(fact.Subject) => $"the car has no state {fact.Subject}",
        FactKind.Reach when !car.Spaces.ContainsKey(fact.Subject) => $"the car has no space {fact.Subject}",
        _ => null,
    };

    private string? Add(HashSet<string> holding, Fact fact)
    {
        if (!holding.Add(fact.Subject))
            return null;
        Changes++;
        Disturbed.Begin(fact);
        return null;
    }

    private void Forget(HashSet<string> holding, Fact fact)
    {
        holding.Remove(fact.Subject);
        Disturbed.Forget(fact);
    }
}
