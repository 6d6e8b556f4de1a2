namespace Refettle.Logbook;

/// <summary>Drops things, and references to them, from a structure.</summary>
/// <param name="isGone">Whether a thing is not there.</param>
/// <param name="isUnitGone">Whether nothing of this name, part or sub-assembly, is there.</param>
internal sealed class Pruner(Predicate<Thing> isGone, Predicate<string> isUnitGone)
{
    public Structure Prune(Structure structure) => structure with
    {
        Zones = Left(structure.Zones, ThingKind.Zone, zone => zone.Id, zone => zone),
        States = Left(structure.States, ThingKind.State, state => state.Id, Prune),
        Parts = Left(structure.Parts, ThingKind.Part, part => part.Id, Prune),
        Joints = Left(structure.Joints, ThingKind.Joint, joint => joint.Id, Prune),
        SubAssemblies = Left(structure.SubAssemblies, ThingKind.SubAssembly, group => group.Id, Prune),
        Spaces = Left(structure.Spaces, ThingKind.Space, space => space.Id, Prune),
    };

    private State Prune(State state)
    {
        var (ways, supports) = (Changed(state.Ways, Prune), Left(state.Supports));
        return ReferenceEquals(ways, state.Ways) && ReferenceEquals(supports, state.Supports)
            ? state
            : state with { Ways = ways, Supports = supports };
    }

    private Part Prune(Part part)
    {
        var zone = ZoneLeft(part.Zone);
        var way = Prune(part.Out);
        return zone == part.Zone && ReferenceEquals(way, part.Out) ? part : part with { Zone = zone, Out = way };
    }

    private Joint Prune(Joint joint)
    {
        var (holds, ways, refit) = (Left(joint.Holds), Changed(joint.Ways, Prune), Prune(joint.Refit));
        return ReferenceEquals(holds, joint.Holds) && ReferenceEquals(ways, joint.Ways) && ReferenceEquals(refit, joint.Refit) ? joint
            : joint with { Holds = holds, Ways = ways, Refit = refit };
    }

    private SubAssembly Prune(SubAssembly group)
    {
        var (members, way) = (Left(group.Members), Prune(group.Out));
        return ReferenceEquals(members, group.Members) && ReferenceEquals(way, group.Out)
            ? group
            : group with { Members = members, Out = way };
    }

    private Space Prune(Space space)
    {
        var (zone, closers) = (ZoneLeft(space.Zone), Left(space.ClosedBy));
        return zone == space.Zone && ReferenceEquals(closers, space.ClosedBy) ? space : space with { Zone = zone, ClosedBy = closers };
    }

    private Way Prune(Way way)
    {
        var (clear, destroys) = (Left(way.Clear), Left(way.Destroys));
        return ReferenceEquals(clear, way.Clear) && ReferenceEquals(destroys, way.Destroys)
            ? way
            : way with { Clear = clear, Destroys = destroys };
    }

    private WayOut Prune(WayOut way)
    {
        var (clear, refit) = (Left(way.Clear), Prune(way.Refit));
        return ReferenceEquals(clear, way.Clear) && ReferenceEquals(refit, way.Refit) ? way : way with { Clear = clear, Refit = refit };
    }

    private RefitWay? Prune(RefitWay? back) =>
        back is null || Left(back.Clear) is var clear && ReferenceEquals(clear, back.Clear) ? back : back with { Clear = clear };

    private string ZoneLeft(string zone) => isGone(new(ThingKind.Zone, zone)) ? Zone.WholeCar : zone;

    private ValueList<string> Left(ValueList<string> units) => Left(units, unit => !isUnitGone(unit));

    private ValueList<Fact> Left(ValueList<Fact> facts) => Left(facts, fact => fact.Kind switch
    {
        FactKind.Open => !isGone(new(ThingKind.Joint, fact.Subject)),
        FactKind.State => !isGone(new(ThingKind.State, fact.Subject)),
        FactKind.Reach => !isGone(new(ThingKind.Space, fact.Subject)),
        _ => !isUnitGone(fact.Subject),
    });

    private ValueList<T> Left<T>(ValueList<T> things, ThingKind kind, Func<T, string> id, Func<T, T> prune)
        where T : class =>
        Changed(Left(things, thing => !isGone(new(kind, id(thing)))), prune);

    /// <summary>The same list where nothing is dropped.</summary>
    private static ValueList<T> Left<T>(ValueList<T> items, Predicate<T> stays)
    {
        foreach (var item in items)
        {
            if (!stays(item))
                return items.Where(kept => stays(kept)).ToValueList();
        }

        return items;
    }

    /// <summary>The same list where no item changes.</summary>
    private static ValueList<T> Changed<T>(ValueList<T> items, Func<T, T> change)
        where T : class
    {
        T[]? changed = null;
        for (var i = 0; i < items.Count; i++)
        {
            var item = change(items[i]);
            if (ReferenceEquals(item, items[i]))
                continue;
            changed ??= [.. items];
            changed[i] = item;
        }

        return changed is null ? items : ValueList.Create<T>(changed);
    }
}
