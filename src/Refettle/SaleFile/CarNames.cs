using Refettle.Logbook;

namespace Refettle.SaleFile;

/// <summary>What the things of a car are called.</summary>
internal sealed class CarNames(Structure structure)
{
    private readonly Dictionary<string, Part> _parts = structure.Parts.ToDictionary(part => part.Id);
    private readonly Dictionary<string, Joint> _joints = structure.Joints.ToDictionary(joint => joint.Id);
    private readonly Dictionary<string, SubAssembly> _groups = structure.SubAssemblies.ToDictionary(group => group.Id);
    private readonly Dictionary<string, string> _others = structure.States.Select(state => (Key: $"state {state.Id}", state.Name))
        .Concat(structure.Spaces.Select(space => (Key: $"space {space.Id}", space.Name)))
        .Concat(structure.Zones.Select(zone => (Key: $"zone {zone.Id}", zone.Name))).ToDictionary(other => other.Key, other => other.Name);

    public Part? Part(string id) => _parts.GetValueOrDefault(id);

    public Joint? Joint(string id) => _joints.GetValueOrDefault(id);

    /// <summary>The parts that move when a part or sub-assembly does.</summary>
    public IEnumerable<string> Moved(string unit) => _groups.TryGetValue(unit, out var group) ? group.Members : [unit];

    public string Unit(string id) => Part(id)?.Name ?? _groups.GetValueOrDefault(id)?.Name ?? id;

    public string OfJoint(string id) => Joint(id) is { } joint
        ? joint.Name ?? $"{Access.Wording.Word(joint.Kind)}, {string.Join(" to ", joint.Holds.Select(Unit))}"
        : id;

    public string Of(Fact fact) => fact.Kind switch
    {
        FactKind.Open => OfJoint(fact.Subject),
        FactKind.State => _others.GetValueOrDefault($"state {fact.Subject}", fact.Subject),
        FactKind.Reach => _others.GetValueOrDefault($"space {fact.Subject}", fact.Subject),
        _ => Unit(fact.Subject),
    };

    /// <summary>Of <c>part x</c>, <c>joint x</c> …; the car itself for null.</summary>
    public string Of(string? about)
    {
        if (about is null)
            return "the car";
        return !Thing.TryParse(about, out var thing) ? about : thing.Kind switch
        {
            ThingKind.Part or ThingKind.SubAssembly => Unit(thing.Id),
            ThingKind.Joint => OfJoint(thing.Id),
            _ => _others.GetValueOrDefault(about, thing.Id),
        };
    }
}
