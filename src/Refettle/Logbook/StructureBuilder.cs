namespace Refettle.Logbook;

/// <summary>A structure while a log is folded: what has the same identifier is replaced, and each part knows its joints.</summary>
internal sealed class StructureBuilder
{
    private readonly Dictionary<string, Zone> _zones = [];
    private readonly Dictionary<string, Space> _spaces = [];
    private readonly Dictionary<string, LooseEnd> _looseEnds = [];
    private readonly Dictionary<string, HashSet<string>> _jointsOf = [];

    public Dictionary<string, Part> Parts { get; } = [];

    public Dictionary<string, SubAssembly> SubAssemblies { get; } = [];

    public Dictionary<string, Joint> Joints { get; } = [];

    public Dictionary<string, State> States { get; } = [];

    public IReadOnlyDictionary<string, Space> Spaces => _spaces;

    public HashSet<string> JointsOf(string part) => _jointsOf.TryGetValue(part, out var joints) ? joints : Empty;

    private static readonly HashSet<string> Empty = [];

    public void Add(Structure added, ValueList<string> tied)
    {
        foreach (var key in tied)
            _looseEnds.Remove(key);
        Load(added);
    }

    /// <summary>Takes things out, and with them what cannot be without them.</summary>
    /// <returns>All that is gone, also what went along.</returns>
    public IReadOnlyCollection<Thing> Remove(IReadOnlyCollection<Thing> things)
    {
        var left = Pruning.Without(All(), things, out var gone);
        Clear();
        Load(left);
        return gone;
    }

    /// <summary>The structure with everything in the order of identifiers and no reference to what is not there.</summary>
    public Structure Build(List<Fault> faults) => Pruning.Mended(Sorted(), faults);

    private void Load(Structure added)
    {
        foreach (var zone in added.Zones)
            _zones[zone.Id] = zone;
        foreach (var state in added.States)
            States[state.Id] = state;
        foreach (var part in added.Parts)
        {
            Parts[part.Id] = part;
            SubAssemblies.Remove(part.Id);
        }

        foreach (var group in added.SubAssemblies)
        {
            SubAssemblies[group.Id] = group;
            Parts.Remove(group.Id);
        }

        foreach (var joint in added.Joints)
            AddJoint(joint);
        foreach (var space in added.Spaces)
            _spaces[space.Id] = space;
        foreach (var end in added.LooseEnds)
            _looseEnds[$"{end.Kit}/{end.Hole}"] = end;
    }

    private void AddJoint(Joint joint)
    {
        if (Joints.TryGetValue(joint.Id, out var old))
        {
            foreach (var part in old.Holds)
                _jointsOf[part].Remove(joint.Id);
        }

        Joints[joint.Id] = joint;
        foreach (var part in joint.Holds)
            (_jointsOf.TryGetValue(part, out var joints) ? joints : _jointsOf[part] = []).Add(joint.Id);
    }

    public Structure All() => new()
    {
        Zones = _zones.Values.ToValueList(),
        States = States.Values.ToValueList(),
        Parts = Parts.Values.ToValueList(),
        Joints = Joints.Values.ToValueList(),
        SubAssemblies = SubAssemblies.Values.ToValueList(),
        Spaces = _spaces.Values.ToValueList(),
        LooseEnds = _looseEnds.Values.ToValueList(),
    };

    private Structure Sorted() => new()
    {
        Zones = InOrder(_zones),
        States = InOrder(States),
        Parts = InOrder(Parts),
        Joints = InOrder(Joints),
        SubAssemblies = InOrder(SubAssemblies),
        Spaces = InOrder(_spaces),
        LooseEnds = InOrder(_looseEnds),
    };

    private static ValueList<T> InOrder<T>(Dictionary<string, T> things) =>
        things.OrderBy(thing => thing.Key, StringComparer.Ordinal).Select(thing => thing.Value).ToValueList();

    private void Clear()
    {
        _zones.Clear();
        States.Clear();
        Parts.Clear();
        Joints.Clear();
        SubAssemblies.Clear();
        _spaces.Clear();
        _looseEnds.Clear();
        _jointsOf.Clear();
    }
}
