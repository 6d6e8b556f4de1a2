namespace Refettle.Kits;

/// <summary>Things that are added to a car or changed on it, before they are entered.</summary>
internal sealed class Draft(Structure car)
{
    private Structure _now = car;

    /// <summary>All that is new or changed.</summary>
    public Structure Added { get; private set; } = Structure.Empty;

    public void Add(Structure things)
    {
        Added = Added.With(things);
        _now = _now.With(things);
    }

    /// <summary>Describes what waited for a loose end. What waits for another hole of the same kit as well moves to that one.</summary>
    public void Tie(Tie tie)
    {
        Fill(tie.End.Kit, new Dictionary<string, string> { [tie.End.Hole] = tie.Part });
        var end = _now.LooseEnds.First(end => end.Key() == tie.End.Key());
        Added = Added.With(Structure.Empty, end.Key());
        _now = _now.With(Structure.Empty, end.Key());
        var split = new Splitting(end.Waits, end.Mentions);
        Add(split.Now);
        foreach (var mention in split.Free)
            Enter(mention);
        foreach (var hole in split.Holes)
            Move(end.Kit, hole, split);
    }

    /// <summary>Puts the part's identifier wherever loose ends of the kit name the hole.</summary>
    private void Fill(string kit, Dictionary<string, string> values)
    {
        string Filled(string text) => Braces.Fill(text, values);
        var renaming = new Renaming(Filled, Filled);
        Add(new()
        {
            LooseEnds = _now.LooseEnds.Where(end => end.Kit == kit).Select(end => end with
            {
                Waits = renaming.Of(end.Waits),
                Mentions = end.Mentions.Select(mention => new Mention(Filled(mention.Thing), mention.List, Filled(mention.Text)))
                    .ToValueList(),
            }).ToValueList(),
        });
    }

    private void Move(string kit, string hole, Splitting split)
    {
        var other = _now.LooseEnds.FirstOrDefault(end => end.Kit == kit && end.Hole == hole);
        if (other is not null)
            Add(new()
            {
                LooseEnds = [other with
                { Waits = other.Waits.With(split.WaitsFor(hole)), Mentions = [.. other.Mentions, .. split.MentionsOf(hole)] }]
            });
    }

    /// <summary>Puts a fact or name into its list, on the car and where the thing still waits, unless
    /// it has gone or has it already.</summary>
    public void Enter(Mention mention)
    {
        var (kind, id) = (mention.Thing.Split(' ')[0], mention.Thing.Split(' ')[^1]);
        Add(Entered(_now, kind, id, mention));
        foreach (var end in _now.LooseEnds.Where(end => IsWaiting(end.Waits, kind, id)))
            Add(new() { LooseEnds = [end with { Waits = end.Waits.With(Entered(end.Waits, kind, id, mention)) }] });
    }

    private static bool IsWaiting(Structure waits, string kind, string id) => kind switch
    {
        "joint" => waits.Joints.Any(joint => joint.Id == id),
        "sub-assembly" => waits.SubAssemblies.Any(unit => unit.Id == id),
        "space" => waits.Spaces.Any(space => space.Id == id),
        _ => false,
    };

    private static Structure Entered(Structure from, string kind, string id, Mention mention) => kind switch
    {
        "part" => new()
        { Parts = [.. from.Parts.Where(part => part.Id == id).Select(part => part with { Out = Entered(part.Out, mention) })] },
        "sub-assembly" =>
            new() { SubAssemblies = [.. from.SubAssemblies.Where(unit => unit.Id == id).Select(unit => Entered(unit, mention))] },
        "joint" => new() { Joints = [.. from.Joints.Where(joint => joint.Id == id).Select(joint => Entered(joint, mention))] },
        "space" => new()
        {
            Spaces = [.. from.Spaces.Where(space => space.Id == id)
                .Select(space => space with { ClosedBy = With(space.ClosedBy, mention.Text) })]
        },
        _ => new()
        {
            States =
            [
                .. from.States.Where(state => state.Id == id).Select(state => mention.List == "supports"
                    ? state with { Supports = With(state.Supports, mention.Text) }
                    : state with { Ways = Entered(state.Ways, mention) }),
            ],
        },
    };

    private static SubAssembly Entered(SubAssembly unit, Mention mention) => mention.List == "members"
        ? unit with { Members = With(unit.Members, mention.Text) }
        : unit with { Out = Entered(unit.Out, mention) };

    private static Joint Entered(Joint joint, Mention mention) => mention.List == "refit.clear"
        ? joint with { Refit = Entered(joint.Refit, mention) }
        : joint with { Ways = Entered(joint.Ways, mention) };

    private static WayOut Entered(WayOut way, Mention mention) =>
        mention.List == "out.refit.clear" ? way with { Refit = Entered(way.Refit, mention) }
        : Fact.TryParse(mention.Text, out var fact) ? way with { Clear = With(way.Clear, fact) } : way;

    private static RefitWay? Entered(RefitWay? back, Mention mention) =>
        back is not null && Fact.TryParse(mention.Text, out var fact) ? back with { Clear = With(back.Clear, fact) } : back;

    private static ValueList<Way> Entered(ValueList<Way> ways, Mention mention) => ways.Select(way =>
        mention.List == $"way:{way.Id}.destroys" ? way with { Destroys = With(way.Destroys, mention.Text) }
        : mention.List == $"way:{way.Id}.clear" && Fact.TryParse(mention.Text, out var fact) ? way with { Clear = With(way.Clear, fact) }
        : way).ToValueList();

    private static ValueList<T> With<T>(ValueList<T> items, T item) => items.Contains(item) ? items : [.. items, item];
}
