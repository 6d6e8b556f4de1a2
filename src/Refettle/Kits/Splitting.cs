namespace Refettle.Kits;

/// <summary>Parts a filled kit into what can be described now and what waits for holes that nothing fills yet.</summary>
internal sealed class Splitting
{
    private readonly Dictionary<string, Structure> _waits = [];
    private readonly Dictionary<string, List<Mention>> _mentions = [];

    /// <summary>What stands now; no name in braces is left in it.</summary>
    public Structure Now { get; }

    public Splitting(Structure filled) => Now = filled with
    {
        Parts = filled.Parts.Select(Without).ToValueList(),
        States = filled.States.Select(Without).ToValueList(),
        Joints = Keep(filled.Joints.Select(Without), joint => joint.Holds, joint => new() { Joints = [joint] }),
        SubAssemblies = Keep(filled.SubAssemblies.Select(Without), unit => unit.Members, unit => new() { SubAssemblies = [unit] }),
        Spaces = Keep(filled.Spaces.Select(Without), space => space.ClosedBy, space => new() { Spaces = [space] }),
    };

    /// <summary>The holes that something waits for.</summary>
    public IEnumerable<string> Holes => _waits.Keys.Union(_mentions.Keys);

    public Structure WaitsFor(string hole) => _waits.GetValueOrDefault(hole, Structure.Empty);

    public ValueList<Mention> MentionsOf(string hole) => _mentions.GetValueOrDefault(hole, []).ToValueList();

    public void Add(Mention mention)
    {
        var hole = Braces.In(mention.Text).First();
        if (!_mentions.TryGetValue(hole, out var mentions))
            _mentions.Add(hole, mentions = []);
        mentions.Add(mention);
    }

    private Part Without(Part part) => part with { Out = Without(part.Out, $"part {part.Id}") };

    private SubAssembly Without(SubAssembly unit) => unit with { Out = Without(unit.Out, $"sub-assembly {unit.Id}") };

    private Joint Without(Joint joint) => joint with { Ways = Without(joint.Ways, $"joint {joint.Id}") };

    private State Without(State state) => state with
    {
        Ways = Without(state.Ways, $"state {state.Id}"),
        Supports = Without(state.Supports, $"state {state.Id}", "supports"),
    };

    /// <summary>A space keeps what closes it already; one that nothing closes yet waits as a whole.</summary>
    private Space Without(Space space) => space.ClosedBy.All(HasBraces)
        ? space
        : space with { ClosedBy = Without(space.ClosedBy, $"space {space.Id}", "closed-by") };

    private WayOut Without(WayOut way, string thing) => way with { Clear = Without(way.Clear, thing, "out.clear") };

    private ValueList<Way> Without(ValueList<Way> ways, string thing) => ways.Select(way => way with
    {
        Clear = Without(way.Clear, thing, $"way:{way.Id}.clear"),
        Destroys = Without(way.Destroys, thing, $"way:{way.Id}.destroys"),
    }).ToValueList();

    private ValueList<T> Without<T>(ValueList<T> items, string thing, string list)
        where T : notnull
    {
        foreach (var item in items.Where(item => HasBraces(item.ToString()!)))
            Add(new(thing, list, item.ToString()!));
        return items.Where(item => !HasBraces(item.ToString()!)).ToValueList();
    }

    private ValueList<T> Keep<T>(IEnumerable<T> things, Func<T, ValueList<string>> needs, Func<T, Structure> alone)
    {
        var kept = new List<T>();
        foreach (var thing in things)
        {
            if (needs(thing).FirstOrDefault(HasBraces) is not { } waiting)
                kept.Add(thing);
            else
                Wait(Braces.In(waiting).First(), alone(thing));
        }

        return kept.ToValueList();
    }

    private void Wait(string hole, Structure thing) => _waits[hole] = WaitsFor(hole).With(thing);

    private static bool HasBraces(string text) => Braces.In(text).Any();
}
