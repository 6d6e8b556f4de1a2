namespace Refettle.Kits;

/// <summary>The things on one side or corner that have no counterpart yet, and what they are called on the other.</summary>
internal sealed class MirrorPick
{
    private readonly Structure _car;
    private readonly Spot _from;
    private readonly HashSet<string> _taken;
    private readonly HashSet<string> _parts;
    private readonly HashSet<string> _otherSide;
    private readonly Dictionary<string, string> _names = [];

    public MirrorPick(Structure car, Spot from)
    {
        (_car, _from) = (car, from);
        _parts = [.. car.Parts.Where(part => IsHere(Of(part))).Select(part => part.Id)];
        _otherSide = [.. car.Parts.Where(part => Of(part).Side() == from.Mirror().Side()).Select(part => part.Id)];
        _taken = [.. Ids(car)];
        Things = Pick();
        foreach (var id in Ids(Things).Concat(Things.LooseEnds.SelectMany(end => Ids(end.Waits))))
            _names.TryAdd(id, NewName(id));
    }

    /// <summary>What is to be mirrored, as it is.</summary>
    public Structure Things { get; }

    /// <summary>The same on the other side.</summary>
    public Structure Mirrored()
    {
        var renaming = new Renaming(Name, MirrorNames.InText);
        var mirrored = renaming.Of(Things);
        return OfKit(mirrored) with
        {
            Zones = MissingZones(mirrored),
            Parts = mirrored.Parts.Select(part => part with { Side = _from.Mirror().Side(), Kit = Kit(part.Kit) }).ToValueList(),
            LooseEnds = Things.LooseEnds.Select(end => Of(end, renaming)).ToValueList(),
        };
    }

    private Structure Pick()
    {
        var kits = _car.Parts.Where(part => _parts.Contains(part.Id)).Select(part => part.Kit).ToHashSet();
        return new()
        {
            Parts = Lacking(_car.Parts, part => part.Id, part => _parts.Contains(part.Id)),
            Joints = Lacking(_car.Joints, joint => joint.Id, joint => IsPicked(joint.Holds)),
            SubAssemblies = Lacking(_car.SubAssemblies, unit => unit.Id, unit => IsPicked(unit.Members)),
            Spaces = Lacking(_car.Spaces, space => space.Id, space => IsPicked(space.ClosedBy)),
            LooseEnds = _car.LooseEnds.Where(end => kits.Contains(end.Kit) && Kit(end.Kit) != end.Kit
                && !_car.Parts.Any(part => part.Kit == Kit(end.Kit))).ToValueList(),
        };
    }

    /// <summary>Joints, sub-assemblies and spaces as the other side's kit has them.</summary>
    private static Structure OfKit(Structure things) => things with
    {
        Joints = things.Joints.Select(joint => joint with { Kit = Kit(joint.Kit) }).ToValueList(),
        SubAssemblies = things.SubAssemblies.Select(unit => unit with { Kit = Kit(unit.Kit) }).ToValueList(),
        Spaces = things.Spaces.Select(space => space with { Kit = Kit(space.Kit) }).ToValueList(),
    };

    private ValueList<T> Lacking<T>(ValueList<T> things, Func<T, string> id, Func<T, bool> isHere) =>
        things.Where(thing => isHere(thing) && !_taken.Contains(NewName(id(thing)))).ToValueList();

    private bool IsPicked(ValueList<string> parts) => parts.Any(_parts.Contains) && !parts.Any(_otherSide.Contains);

    private bool IsHere(Spot spot) => _from.IsCorner() ? spot == _from : spot.Side() == _from.Side();

    /// <summary>An identifier without a side's code gets one at its end.</summary>
    private string NewName(string id) => MirrorNames.Of(id) is var other && other != id ? other : $"{id}-{_from.Mirror().Code()}";

    /// <summary>The counterpart of what is mirrored or is on the other side already; anything else as it is.</summary>
    private string Name(string id)
    {
        if (_names.TryGetValue(id, out var name))
            return name;
        var other = MirrorNames.Of(id);
        return _taken.Contains(other) || _car.Zones.Any(zone => zone.Id == id) ? other : id;
    }

    private ValueList<Zone> MissingZones(Structure mirrored)
    {
        var used = mirrored.Parts.Select(part => part.Zone).Concat(mirrored.Spaces.Select(space => space.Zone)).ToHashSet();
        return _car.Zones.Select(zone => zone with { Id = MirrorNames.Of(zone.Id), Name = MirrorNames.InText(zone.Name) })
            .Where(zone => used.Contains(zone.Id) && !_taken.Contains(zone.Id)).ToValueList();
    }

    private LooseEnd Of(LooseEnd end, Renaming renaming) => end with
    {
        Kit = Kit(end.Kit)!,
        Spot = end.Spot.Mirror(),
        Prefix = MirrorNames.Of(end.Prefix),
        Waits = OfKit(renaming.Of(end.Waits)),
        Mentions = end.Mentions.Select(mention => new Mention(Thing(mention.Thing), mention.List, Text(mention.Text))).ToValueList(),
    };

    private string Thing(string thing) => $"{thing.Split(' ')[0]} {Name(thing.Split(' ')[^1])}";

    private string Text(string text) => Fact.TryParse(text, out var fact) ? (fact with { Subject = Name(fact.Subject) }).ToString()
        : text.Contains('{') ? text : Name(text);

    private static string? Kit(string? kit) => kit is null ? null : string.Join(' ', kit.Split(' ').Select(MirrorNames.Of));

    private static Spot Of(Part part) =>
        Spots.Of(part) is var spot && spot == Spot.None && Spots.TryParse(part.Id.Split('-')[0], out var named) ? named : spot;

    private static IEnumerable<string> Ids(Structure things) => things.Parts.Select(part => part.Id)
        .Concat(things.Joints.Select(joint => joint.Id)).Concat(things.SubAssemblies.Select(unit => unit.Id))
        .Concat(things.Spaces.Select(space => space.Id)).Concat(things.Zones.Select(zone => zone.Id))
        .Concat(things.States.Select(state => state.Id));
}
