namespace Refettle.Kits;

/// <summary>Parts a filled kit into what can be described now and what waits for holes that nothing fills yet.</summary>
internal sealed class Splitting
{
    private readonly Dictionary<string, Structure> _waits = [];
    private readonly Dictionary<string, List<Mention>> _mentions = [];
    private readonly Dictionary<string, string> _waiting = [];

    /// <param name="filled">What may name holes.</param>
    /// <param name="mentions">What may name holes too, or things that wait for them.</param>
    public Splitting(Structure filled, IEnumerable<Mention> mentions)
    {
        var joints = Keep(filled.Joints, joint => Fact.Open(joint.Id), joint => joint.Holds, joint => new() { Joints = [joint] });
        var units = Keep(filled.SubAssemblies, unit => Fact.Off(unit.Id), unit => unit.Members, unit => new() { SubAssemblies = [unit] });
        var spaces = Keep(filled.Spaces, space => Fact.Reach(space.Id), ClosersOf, space => new() { Spaces = [space] });
        Now = Cleared(filled with { Joints = joints, SubAssemblies = units, Spaces = spaces });
        foreach (var hole in _waits.Keys.ToArray())
            _waits[hole] = Cleared(_waits[hole]);
        Free = mentions.Where(mention => !Waits(mention)).ToValueList();
    }

    /// <summary>What stands now; no name in braces is left in it.</summary>
    public Structure Now { get; }

    /// <summary>Mentions that wait for nothing any more.</summary>
    public ValueList<Mention> Free { get; }

    /// <summary>The holes that something waits for.</summary>
    public IEnumerable<string> Holes => _waits.Keys.Union(_mentions.Keys);

    public Structure WaitsFor(string hole) => _waits.GetValueOrDefault(hole, Structure.Empty);

    /// <summary>How many joints, sub-assemblies and spaces cannot be described without a hole, also when
    /// they wait for another one first.</summary>
    public int ThingsNaming(string hole) => _waits.Values.Sum(things =>
        things.Joints.Count(joint => Names(joint.Holds, hole))
        + things.SubAssemblies.Count(unit => Names(unit.Members, hole))
        + things.Spaces.Count(space => Names(space.ClosedBy, hole)));

    public ValueList<Mention> MentionsOf(string hole) => _mentions.GetValueOrDefault(hole, []).ToValueList();

    /// <summary>A space that something closes already is described; one that nothing closes yet waits as a whole.</summary>
    private static ValueList<string> ClosersOf(Space space) => space.ClosedBy.All(HasBraces) ? space.ClosedBy : [];

    /// <summary>The things without what names a hole, or a thing that waits for one.</summary>
    private Structure Cleared(Structure things) => things with
    {
        Parts = things.Parts.Select(part => part with { Out = Without(part.Out, $"part {part.Id}") }).ToValueList(),
        States = things.States.Select(state => Without(state, $"state {state.Id}")).ToValueList(),
        Joints = things.Joints.Select(joint => Without(joint, $"joint {joint.Id}")).ToValueList(),
        SubAssemblies = things.SubAssemblies.Select(unit => unit with { Out = Without(unit.Out, $"sub-assembly {unit.Id}") }).ToValueList(),
        Spaces = things.Spaces.Select(space => ClosersOf(space).Count > 0 ? space
            : space with { ClosedBy = Without(space.ClosedBy, $"space {space.Id}", "closed-by") }).ToValueList(),
    };

    private State Without(State state, string thing) => state with
    {
        Ways = Without(state.Ways, thing),
        Supports = Without(state.Supports, thing, "supports"),
    };

    private Joint Without(Joint joint, string thing) =>
        joint with { Ways = Without(joint.Ways, thing), Refit = Without(joint.Refit, thing, "refit.clear") };

    private WayOut Without(WayOut way, string thing) =>
        way with { Clear = Without(way.Clear, thing, "out.clear"), Refit = Without(way.Refit, thing, "out.refit.clear") };

    private RefitWay? Without(RefitWay? back, string thing, string list) =>
        back is null ? null : back with { Clear = Without(back.Clear, thing, list) };

    private ValueList<Way> Without(ValueList<Way> ways, string thing) => ways.Select(way => way with
    {
        Clear = Without(way.Clear, thing, $"way:{way.Id}.clear"),
        Destroys = Without(way.Destroys, thing, $"way:{way.Id}.destroys"),
    }).ToValueList();

    private ValueList<T> Without<T>(ValueList<T> items, string thing, string list)
        where T : notnull =>
        items.Where(item => !Waits(new(thing, list, item.ToString()!))).ToValueList();

    /// <summary>Whether a mention has to wait; if so it is kept with what it waits for.</summary>
    private bool Waits(Mention mention)
    {
        var hole = Braces.In(mention.Text).Concat(Braces.In(mention.Thing)).FirstOrDefault() ?? _waiting.GetValueOrDefault(mention.Text);
        if (hole is null)
            return false;
        if (!_mentions.TryGetValue(hole, out var mentions))
            _mentions.Add(hole, mentions = []);
        mentions.Add(mention);
        return true;
    }

    private ValueList<T> Keep<T>(ValueList<T> things, Func<T, Fact> fact, Func<T, ValueList<string>> needs, Func<T, Structure> alone)
    {
        var kept = new List<T>();
        foreach (var thing in things)
        {
            if (needs(thing).SelectMany(Braces.In).FirstOrDefault() is { } hole)
                Wait(hole, fact(thing), alone(thing));
            else
                kept.Add(thing);
        }

        return kept.ToValueList();
    }

    private void Wait(string hole, Fact fact, Structure thing)
    {
        _waiting[fact.ToString()] = hole;
        _waits[hole] = WaitsFor(hole).With(thing);
    }

    private static bool Names(ValueList<string> parts, string hole) => parts.Contains($"{{{hole}}}");

    private static bool HasBraces(string text) => Braces.In(text).Any();
}
