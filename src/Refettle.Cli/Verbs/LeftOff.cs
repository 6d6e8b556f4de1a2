namespace Refettle.Cli.Verbs;

/// <summary>What stays off or open on purpose, by its names.</summary>
internal static class LeftOff
{
    /// <summary><c>part x</c>, <c>joint x</c>, <c>state x</c>; of a sub-assembly its parts. A name alone means all that have it.</summary>
    public static Result<ValueList<string>> Of(Structure structure, IEnumerable<string> asked)
    {
        var known = Known(structure).ToList();
        var found = asked.Select(name => (Name: name,
            Things: known.Where(one => one.Name == name || one.Name.EndsWith($" {name}", StringComparison.Ordinal))
                .SelectMany(one => one.Things).ToList())).ToList();
        var faults = found.Where(one => one.Things.Count == 0)
            .Select(one => new Fault(one.Name, "the car has no part, sub-assembly, joint or state of this name",
                NearNames.Ask(one.Name, known.SelectMany(thing => new[] { thing.Name, thing.Name.Split(' ')[1] }),
                    "refettle ready lists what is open."))).ToList();
        return faults.Count > 0
            ? Result<ValueList<string>>.Bad(faults)
            : Result<ValueList<string>>.Good(found.SelectMany(one => one.Things).Distinct().ToValueList());
    }

    private static IEnumerable<(string Name, IEnumerable<string> Things)> Known(Structure structure) =>
        structure.Parts.Select(part => $"part {part.Id}").Concat(structure.Joints.Select(joint => $"joint {joint.Id}"))
            .Concat(structure.States.Select(state => $"state {state.Id}"))
            .Select(thing => (thing, (IEnumerable<string>)[thing]))
            .Concat(structure.SubAssemblies.Select(unit => ($"sub-assembly {unit.Id}", unit.Members.Select(part => $"part {part}"))));
}
