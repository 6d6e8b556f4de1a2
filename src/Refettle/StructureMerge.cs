namespace Refettle;

/// <summary>Puts structures together.</summary>
public static class StructureMerge
{
    /// <summary>The structure with another added: what has the same identifier (loose ends: the same key) is replaced.</summary>
    /// <param name="tied">Loose ends, as <c>kit/hole</c>, that are gone.</param>
    public static Structure With(this Structure structure, Structure added, params IEnumerable<string> tied)
    {
        var gone = tied.ToHashSet();
        return new()
        {
            Zones = Join(structure.Zones, added.Zones, zone => zone.Id),
            States = Join(structure.States, added.States, state => state.Id),
            Parts = Join(structure.Parts, added.Parts, part => part.Id),
            Joints = Join(structure.Joints, added.Joints, joint => joint.Id),
            SubAssemblies = Join(structure.SubAssemblies, added.SubAssemblies, unit => unit.Id),
            Spaces = Join(structure.Spaces, added.Spaces, space => space.Id),
            LooseEnds = Join(structure.LooseEnds.Where(end => !gone.Contains(end.Key())).ToValueList(), added.LooseEnds, end => end.Key()),
        };
    }

    private static ValueList<T> Join<T>(ValueList<T> things, ValueList<T> added, Func<T, string> id)
    {
        if (added.Count == 0)
            return things;
        var place = new Dictionary<string, int>();
        var all = new List<T>(things.Count + added.Count);
        foreach (var thing in things.Concat(added))
        {
            if (place.TryAdd(id(thing), all.Count))
                all.Add(thing);
            else
                all[place[id(thing)]] = thing;
        }

        return all.ToValueList();
    }
}
