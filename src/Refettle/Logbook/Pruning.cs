namespace Refettle.Logbook;

/// <summary>Keeps a structure consistent when things are taken out of it.</summary>
/// <remarks>A joint or sub-assembly that is left with fewer than two parts goes too, and so does a space that nothing closes any more;
/// a zone's parts move to the whole car; what named a removed thing as in the way, as support or as destroyed no longer does; the loose
/// ends of a kit go with its last thing.</remarks>
internal static class Pruning
{
    /// <param name="gone">All that was removed, also what went along.</param>
    public static Structure Without(Structure structure, IEnumerable<Thing> things, out HashSet<Thing> gone)
    {
        var removed = gone = [.. things];
        bool IsGone(string unit) => removed.Contains(new(ThingKind.Part, unit)) || removed.Contains(new(ThingKind.SubAssembly, unit));
        foreach (var (thing, _) in Undone(structure, IsGone).ToList())
            removed.Add(thing);
        return WithoutLooseEnds(new Pruner(removed.Contains, IsGone).Prune(structure), structure);
    }

    /// <summary>The structure without what refers to things it does not have; a thing that cannot be without them is reported.</summary>
    public static Structure Mended(Structure structure, List<Fault> faults)
    {
        var known = Named(structure).ToHashSet();
        known.Add(new(ThingKind.Zone, Zone.WholeCar));
        bool IsUnknown(string unit) => !known.Contains(new(ThingKind.Part, unit)) && !known.Contains(new(ThingKind.SubAssembly, unit));
        foreach (var (thing, missing) in Undone(structure, IsUnknown).ToList())
        {
            known.Remove(thing);
            faults.Add(new(thing.ToString(), $"it needs {string.Join(", ", missing)}, which the car does not have",
                "It is left out until that is described."));
        }

        return new Pruner(thing => !known.Contains(thing), IsUnknown).Prune(structure);
    }

    /// <summary>The things that cannot be without the units that are gone, each with those units.</summary>
    private static IEnumerable<(Thing Thing, IEnumerable<string> Missing)> Undone(Structure structure, Func<string, bool> isGone)
    {
        foreach (var group in structure.SubAssemblies.Where(group => IsTooFew(group.Members, 2, isGone)))
            yield return (new(ThingKind.SubAssembly, group.Id), group.Members.Where(isGone));
        foreach (var joint in structure.Joints.Where(joint => IsTooFew(joint.Holds, 2, isGone)))
            yield return (new(ThingKind.Joint, joint.Id), joint.Holds.Where(isGone));
        foreach (var space in structure.Spaces.Where(space => IsTooFew(space.ClosedBy, 1, isGone)))
            yield return (new(ThingKind.Space, space.Id), space.ClosedBy.Where(isGone));
    }

    private static bool IsTooFew(ValueList<string> units, int least, Func<string, bool> isGone)
    {
        var left = 0;
        foreach (var unit in units.AsSpan())
            left += isGone(unit) ? 0 : 1;
        return left < least;
    }

    public static IEnumerable<Thing> Named(Structure structure) =>
        structure.Zones.Select(zone => new Thing(ThingKind.Zone, zone.Id))
            .Concat(structure.States.Select(state => new Thing(ThingKind.State, state.Id)))
            .Concat(structure.Parts.Select(part => new Thing(ThingKind.Part, part.Id)))
            .Concat(structure.Joints.Select(joint => new Thing(ThingKind.Joint, joint.Id)))
            .Concat(structure.SubAssemblies.Select(group => new Thing(ThingKind.SubAssembly, group.Id)))
            .Concat(structure.Spaces.Select(space => new Thing(ThingKind.Space, space.Id)));

    private static Structure WithoutLooseEnds(Structure left, Structure before)
    {
        if (before.LooseEnds.Count == 0)
            return left;
        var kits = Kits(before).Except(Kits(left)).ToHashSet();
        return left with { LooseEnds = left.LooseEnds.Where(end => !kits.Contains(end.Kit)).ToValueList() };
    }

    private static HashSet<string?> Kits(Structure structure) =>
    [
        .. structure.Parts.Select(part => part.Kit),
        .. structure.Joints.Select(joint => joint.Kit),
        .. structure.States.Select(state => state.Kit),
        .. structure.SubAssemblies.Select(group => group.Kit),
        .. structure.Spaces.Select(space => space.Kit),
    ];
}
