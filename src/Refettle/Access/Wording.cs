using Refettle.Access.Derivation;

namespace Refettle.Access;

/// <summary>Puts facts and ways into a mechanic's words.</summary>
internal static class Wording
{
    public static string Says(WaySource way, CarStanding standing) => way.Fact.Kind switch
    {
        FactKind.Open => Opening(standing.Joints[way.Fact.Subject], way, standing),
        FactKind.Off when way.Name.StartsWith("with ", StringComparison.Ordinal) =>
            $"{NameOf(way.Fact, standing)} comes with the {standing.SubAssemblies[way.Name["with ".Length..]].Name.ToLowerInvariant()}",
        FactKind.Off => $"Take off: {NameOf(way.Fact, standing)}",
        FactKind.Free => $"Free: {NameOf(way.Fact, standing)}",
        FactKind.Reach => $"Open to work: {NameOf(way.Fact, standing)}",
        _ => NameOf(way.Fact, standing),
    };

    /// <summary>The name of a fact's subject.</summary>
    public static string NameOf(Fact fact, CarStanding standing) => fact.Kind switch
    {
        FactKind.Open => JointName(standing.Joints[fact.Subject], standing),
        FactKind.State => standing.States[fact.Subject].Name,
        FactKind.Reach => standing.Spaces[fact.Subject].Name,
        _ => standing.Parts.TryGetValue(fact.Subject, out var part) ? part.Name : standing.SubAssemblies[fact.Subject].Name,
    };

    public static string JointName(Joint joint, CarStanding standing) =>
        joint.Name ?? $"{Word(joint.Kind)}: {string.Join(" to ", joint.Holds.Select(part => standing.Parts[part].Name))}";

    private static string Opening(Joint joint, WaySource way, CarStanding standing)
    {
        var count = joint.Count > 1 ? $"{joint.Count} × " : "";
        var bench = way.Way?.Where == WorkPlace.OnBench ? ", on the bench" : "";
        return $"Undo {count}{JointName(joint, standing)}{bench}";
    }

    public static string Word(JointKind kind) => kind == JointKind.PressFit ? "press fit" : kind.ToString().ToLowerInvariant();
}
