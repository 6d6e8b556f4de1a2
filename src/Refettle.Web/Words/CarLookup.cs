using Refettle.Access;

namespace Refettle.Web.Words;

/// <summary>A car's things by identifier, what is true of them, and what they are called.</summary>
public sealed class CarLookup(Car car)
{
    private const int MostNamed = 3;

    private readonly CarStanding _standing = new(car);

    public Car Car { get; } = car;

    public Part? Part(string id) => _standing.Parts.GetValueOrDefault(id);

    public Joint? Joint(string id) => _standing.Joints.GetValueOrDefault(id);

    public State? State(string id) => _standing.States.GetValueOrDefault(id);

    public IEnumerable<Joint> JointsOf(string part) => _standing.JointsOf(part);

    public IEnumerable<SubAssembly> SubAssembliesOf(string part) => _standing.SubAssembliesOf(part);

    /// <summary>It is so on the car as it stands.</summary>
    public bool Holds(Fact fact) => _standing.IsTrue(fact);

    /// <summary>Off the car, alone or with a sub-assembly.</summary>
    public bool IsOff(string part) => Holds(Fact.Off(part));

    public bool IsStance(Fact fact) => fact.Kind == FactKind.State && State(fact.Subject)?.IsStance == true;

    public string PartName(string id) => Part(id)?.Name ?? _standing.SubAssemblies.GetValueOrDefault(id)?.Name ?? id;

    public string ZoneName(string id) => _standing.Zones.GetValueOrDefault(id)?.Name ?? (id == Zone.WholeCar ? "Whole car" : id);

    public string JointName(Joint joint) =>
        joint.Name ?? $"{Plain.Word(joint.Kind)}: {string.Join(" – ", joint.Holds.Select(PartName))}";

    /// <summary>What a fact is about: <c>Rear axle</c>.</summary>
    public string Subject(Fact fact) => fact.Kind switch
    {
        FactKind.Open => Joint(fact.Subject) is { } joint ? JointName(joint) : fact.Subject,
        FactKind.State => State(fact.Subject)?.Name ?? fact.Subject,
        FactKind.Reach => _standing.Spaces.GetValueOrDefault(fact.Subject)?.Name ?? fact.Subject,
        _ => PartName(fact.Subject),
    };

    /// <summary>A fact in as few words as a box has room for.</summary>
    public string Short(Fact fact) => Joint(fact.Subject) is { Name: null } joint && fact.Kind == FactKind.Open
        ? $"{Plain.Word(joint.Kind)}: {PartName(joint.Holds[0])}"
        : fact.Kind == FactKind.Open ? Subject(fact) : Name(fact);

    /// <summary>Facts in words; of more than three the first, and how many more.</summary>
    public string Names(IReadOnlyList<Fact> facts) => facts.Count > MostNamed
        ? $"{Name(facts[0])} and {facts.Count - 1} more"
        : string.Join(", ", facts.Select(Name));

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
