namespace Refettle.Access;

/// <summary>What is true of a car as it stands, and how its things hang together: the lookup behind every question.</summary>
/// <remarks>The log may say that a part is off without saying that its joints are open. A joint between a part that is off and one
/// that is not cannot be closed, nor one between parts that left the car separately: both count as open.</remarks>
public sealed class CarStanding
{
    private readonly HashSet<Fact> _done;
    private readonly ILookup<string, Joint> _jointsOf;
    private readonly ILookup<string, SubAssembly> _unitsOf;
    private readonly HashSet<string> _off;

    public CarStanding(Car car)
    {
        Car = car;
        var structure = car.Structure;
        Parts = structure.Parts.ToDictionary(part => part.Id);
        Joints = structure.Joints.ToDictionary(joint => joint.Id);
        SubAssemblies = structure.SubAssemblies.ToDictionary(unit => unit.Id);
        States = structure.States.ToDictionary(state => state.Id);
        Spaces = structure.Spaces.ToDictionary(space => space.Id);
        Zones = structure.Zones.ToDictionary(zone => zone.Id);
        _done = [.. car.Done];
        _jointsOf = structure.Joints.SelectMany(joint => joint.Holds.Distinct(), (joint, part) => (joint, part))
            .ToLookup(pair => pair.part, pair => pair.joint);
        _unitsOf = structure.SubAssemblies.SelectMany(unit => unit.Members.Distinct(), (unit, part) => (unit, part))
            .ToLookup(pair => pair.part, pair => pair.unit);
        _off = [.. Parts.Keys.Where(IsMarkedOff)];
    }

    public Car Car { get; }

    public IReadOnlyDictionary<string, Part> Parts { get; }

    public IReadOnlyDictionary<string, Joint> Joints { get; }

    public IReadOnlyDictionary<string, SubAssembly> SubAssemblies { get; }

    public IReadOnlyDictionary<string, State> States { get; }

    public IReadOnlyDictionary<string, Space> Spaces { get; }

    public IReadOnlyDictionary<string, Zone> Zones { get; }

    public IEnumerable<Joint> JointsOf(string part) => _jointsOf[part];

    public IEnumerable<SubAssembly> SubAssembliesOf(string part) => _unitsOf[part];

    /// <summary>The joints between a member and a part that is not one.</summary>
    public IEnumerable<Joint> OuterJointsOf(SubAssembly unit) =>
        unit.Members.SelectMany(JointsOf).Distinct().Where(joint => joint.Holds.Any(part => !unit.Members.Contains(part)));

    /// <summary>Whether a fact holds now.</summary>
    public bool IsTrue(Fact fact) => fact.Kind switch
    {
        FactKind.Off => _off.Contains(fact.Subject) || IsUnitOff(fact.Subject),
        FactKind.Free => _off.Contains(fact.Subject) && JointsOf(fact.Subject).All(IsOpen),
        FactKind.Open => Joints.TryGetValue(fact.Subject, out var joint) && IsOpen(joint),
        FactKind.State => IsInState(fact.Subject),
        FactKind.Reach => Spaces.TryGetValue(fact.Subject, out var space) && space.ClosedBy.All(part => IsTrue(Fact.Off(part))),
        _ => false,
    };

    /// <summary>Whether a stance can be taken: what carries the car is on it and sound.</summary>
    public bool CanCarry(State stance) =>
        Carriers(stance).All(part => !_off.Contains(part) && !Car.Unsound.Contains(part));

    /// <summary>The parts that carry the car in a stance: those of its sheet, and its wheels where it stands on them.</summary>
    public IEnumerable<string> Carriers(State stance) => stance.Id is not (Car.OnWheels or Car.AtRideHeight) ? stance.Supports
        : stance.Supports.Concat(Parts.Values.Where(part => part.Roles.Contains(Part.Wheel)).Select(part => part.Id)).Distinct();

    /// <summary>Whether a part or sub-assembly that comes off by a fact carries the car in a stance.</summary>
    public bool TakesOffCarrier(Fact fact, State stance) => fact.Kind is FactKind.Off or FactKind.Free
        && (SubAssemblies.TryGetValue(fact.Subject, out var unit) ? unit.Members : [fact.Subject]).Intersect(Carriers(stance)).Any();

    private bool IsMarkedOff(string part) =>
        _done.Contains(Fact.Off(part)) || _done.Contains(Fact.Free(part))
        || SubAssembliesOf(part).Any(unit => _done.Contains(Fact.Off(unit.Id)));

    private bool IsUnitOff(string name) =>
        SubAssemblies.TryGetValue(name, out var unit) && (_done.Contains(Fact.Off(name)) || unit.Members.All(_off.Contains));

    private bool IsOpen(Joint joint)
    {
        if (_done.Contains(Fact.Open(joint.Id)) || joint.Holds.Any(part => _done.Contains(Fact.Free(part))))
            return true;
        var off = joint.Holds.Count(_off.Contains);
        return off > 0 && (off < joint.Holds.Count || !CanBeTogether(joint));
    }

    private bool CanBeTogether(Joint joint) =>
        SubAssembliesOf(joint.Holds[0]).Any(unit => joint.Holds.All(unit.Members.Contains));

    /// <summary>Whether it is the fact of standing some way: stances exclude each other.</summary>
    public bool IsStance(Fact fact) => fact.Kind == FactKind.State && States.TryGetValue(fact.Subject, out var state) && state.IsStance;

    private bool IsInState(string name) => IsStance(Fact.State(name)) ? Car.Stance == name : _done.Contains(Fact.State(name));
}
