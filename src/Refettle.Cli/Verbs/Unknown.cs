namespace Refettle.Cli.Verbs;

/// <summary>Faults about names that the car does not have.</summary>
internal static class Unknown
{
    public static Fault? Part(Structure structure, string part) => Of("part", part, structure.Parts.Select(known => known.Id));

    public static Fault? Joint(Structure structure, string joint) => Of("joint", joint, structure.Joints.Select(known => known.Id));

    public static Fault? Subject(Structure structure, Fact fact) => fact.Kind switch
    {
        FactKind.Off =>
            Of("part", fact.Subject, structure.Parts.Select(part => part.Id).Concat(structure.SubAssemblies.Select(group => group.Id))),
        FactKind.Free => Part(structure, fact.Subject),
        FactKind.Open => Joint(structure, fact.Subject),
        FactKind.State => Of("state", fact.Subject, structure.States.Select(state => state.Id)),
        _ => Of("space", fact.Subject, structure.Spaces.Select(space => space.Id)),
    };

    public static Fault? Of(string kind, string id, IEnumerable<string> known) => known.Contains(id)
        ? null
        : new($"{kind} {id}", $"there is no {kind} {id} on this car", NearNames.Ask(id, known, $"refettle show {kind}s lists them all."));
}
