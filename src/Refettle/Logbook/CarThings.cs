namespace Refettle.Logbook;

/// <summary>The parts and joints of a car that pieces can go onto, as <c>part x</c> and <c>joint x</c>.</summary>
internal static class CarThings
{
    public static HashSet<string> Of(Structure structure) =>
        structure.Parts.Select(part => $"part {part.Id}").Concat(structure.Joints.Select(joint => $"joint {joint.Id}")).ToHashSet();

    /// <summary>Whether a part or joint is on the car's description.</summary>
    public static bool Has(this StructureBuilder structure, string text) => Thing.TryParse(text, out var thing) && thing.Kind switch
    {
        ThingKind.Part => structure.Parts.ContainsKey(thing.Id),
        ThingKind.Joint => structure.Joints.ContainsKey(thing.Id),
        _ => false,
    };

    /// <summary>Drops what a book keeps of things that are not there any more.</summary>
    public static void Forget<T>(this SortedDictionary<string, T> byThing, StructureBuilder structure)
    {
        foreach (var thing in byThing.Keys.Where(thing => !structure.Has(thing)).ToList())
            byThing.Remove(thing);
    }
}
