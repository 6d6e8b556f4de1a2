namespace Refettle.Checks;

/// <summary>Everything a structure describes, by identifier.</summary>
internal sealed class Names(Structure structure)
{
    public Dictionary<string, Part> Parts { get; } = By(structure.Parts, part => part.Id);

    public Dictionary<string, SubAssembly> SubAssemblies { get; } = By(structure.SubAssemblies, unit => unit.Id);

    public Dictionary<string, Joint> Joints { get; } = By(structure.Joints, joint => joint.Id);

    public Dictionary<string, State> States { get; } = By(structure.States, state => state.Id);

    public Dictionary<string, Space> Spaces { get; } = By(structure.Spaces, space => space.Id);

    public Dictionary<string, Zone> Zones { get; } = By(structure.Zones, zone => zone.Id);

    public bool IsFixed(string part) => Parts.TryGetValue(part, out var found) && found.Fixed;

    public bool IsFixedUnit(string unit) =>
        SubAssemblies.TryGetValue(unit, out var found) && found.Members.Any(IsFixed);

    public bool IsStance(Fact fact) =>
        fact.Kind == FactKind.State && States.TryGetValue(fact.Subject, out var state) && state.IsStance;

    public bool Knows(Fact fact) => fact.Kind switch
    {
        FactKind.Off => Parts.ContainsKey(fact.Subject) || SubAssemblies.ContainsKey(fact.Subject),
        FactKind.Free => Parts.ContainsKey(fact.Subject),
        FactKind.Open => Joints.ContainsKey(fact.Subject),
        FactKind.State => States.ContainsKey(fact.Subject),
        _ => Spaces.ContainsKey(fact.Subject),
    };

    private static Dictionary<string, T> By<T>(ValueList<T> things, Func<T, string> id)
    {
        var found = new Dictionary<string, T>(things.Count);
        foreach (var thing in things)
            found.TryAdd(id(thing), thing);
        return found;
    }
}
