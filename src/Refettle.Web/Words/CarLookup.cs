namespace Refettle.Web.Words;

/// <summary>A car's things by identifier, and what they are called.</summary>
public sealed class CarLookup(Car car)
{
    private readonly Dictionary<string, Part> _parts = car.Structure.Parts.ToDictionary(part => part.Id);
    private readonly Dictionary<string, Joint> _joints = car.Structure.Joints.ToDictionary(joint => joint.Id);
    private readonly Dictionary<string, State> _states = car.Structure.States.ToDictionary(state => state.Id);
    private readonly Dictionary<string, Space> _spaces = car.Structure.Spaces.ToDictionary(space => space.Id);
    private readonly Dictionary<string, Zone> _zones = car.Structure.Zones.ToDictionary(zone => zone.Id);
    private readonly Dictionary<string, SubAssembly> _subAssemblies = car.Structure.SubAssemblies.ToDictionary(group => group.Id);
    private readonly ILookup<string, Joint> _jointsOf = car.Structure.Joints
        .SelectMany(joint => joint.Holds.Select(part => (part, joint))).ToLookup(pair => pair.part, pair => pair.joint);
    private readonly HashSet<Fact> _done = [.. car.Done];

    public Car Car { get; } = car;

    public Part? Part(string id) => _parts.GetValueOrDefault(id);

    public Joint? Joint(string id) => _joints.GetValueOrDefault(id);

    public State? State(string id) => _states.GetValueOrDefault(id);

    public IEnumerable<Joint> JointsOf(string part) => _jointsOf[part];

    public IEnumerable<SubAssembly> SubAssembliesOf(string part) =>
        Car.Structure.SubAssemblies.Where(group => group.Members.Contains(part));

    /// <summary>The log says so; for a stance, the car is in it now.</summary>
    public bool Holds(Fact fact) =>
        _done.Contains(fact) || (fact.Kind == FactKind.State && Car.Stance == fact.Subject);

    /// <summary>Off the car, alone or with a sub-assembly.</summary>
    public bool IsOff(string part) =>
        Holds(Fact.Off(part)) || Holds(Fact.Free(part)) || SubAssembliesOf(part).Any(group => Holds(Fact.Off(group.Id)));

    public string PartName(string id) => _parts.TryGetValue(id, out var part) ? part.Name : _subAssemblies.GetValueOrDefault(id)?.Name ?? id;

    public string ZoneName(string id) => _zones.GetValueOrDefault(id)?.Name ?? (id == Zone.WholeCar ? "Whole car" : id);

    public string JointName(Joint joint) =>
        joint.Name ?? $"{Plain.Word(joint.Kind)}: {string.Join(" – ", joint.Holds.Select(PartName))}";

    public string JointName(string id) => _joints.TryGetValue(id, out var joint) ? JointName(joint) : id;

    /// <summary>What a fact is about: <c>Rear axle</c>.</summary>
    public string Subject(Fact fact) => fact.Kind switch
    {
        FactKind.Open => JointName(fact.Subject),
        FactKind.State => _states.GetValueOrDefault(fact.Subject)?.Name ?? fact.Subject,
        FactKind.Reach => _spaces.GetValueOrDefault(fact.Subject)?.Name ?? fact.Subject,
        _ => PartName(fact.Subject),
    };

    /// <summary>A fact in words: <c>Rear axle off</c>.</summary>
    public string Name(Fact fact) => fact.Kind switch
    {
        FactKind.Off => $"{Subject(fact)} off",
        FactKind.Free => $"{Subject(fact)} free",
        FactKind.Open => $"{Subject(fact)} open",
        FactKind.Reach => $"{Subject(fact)} within reach",
        _ => Subject(fact),
    };
}
