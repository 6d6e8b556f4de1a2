namespace Refettle.CloseUp;

/// <summary>What can be undone only once a space can be reached, and so is done again only before it is closed.</summary>
internal static class Behind
{
    /// <summary>What lies behind all that closes the space: what lies behind one of several can still
    /// be reached while another is on.</summary>
    public static HashSet<Fact> Of(Structure structure, Space space)
    {
        var behind = space.ClosedBy.Select(unit => Of(structure, Closing(structure, unit).Append(Fact.Reach(space.Id)))).ToList();
        return behind.Skip(1).Aggregate(behind[0], (all, one) => [.. all.Intersect(one)]);
    }

    /// <summary>That a part or sub-assembly is off, in all the words a need can have for it.</summary>
    private static IEnumerable<Fact> Closing(Structure structure, string unit) =>
        Members(structure, unit).SelectMany(Leaves).Append(Fact.Off(unit));

    private static ValueList<string> Members(Structure structure, string unit) =>
        structure.SubAssemblies.FirstOrDefault(group => group.Id == unit) is { } group ? group.Members : [unit];

    private static HashSet<Fact> Of(Structure structure, IEnumerable<Fact> first)
    {
        var behind = first.ToHashSet();
        var held = structure.Joints.SelectMany(joint => joint.Holds.Select(part => (part, joint.Id)))
            .ToLookup(pair => pair.part, pair => Fact.Open(pair.Id));
        for (var before = 0; before < behind.Count;)
        {
            before = behind.Count;
            behind.UnionWith(structure.Joints.Where(joint => joint.Ways.All(way => Needs(joint, way).Any(behind.Contains)))
                .Select(joint => Fact.Open(joint.Id)));
            behind.UnionWith(structure.Parts
                .Where(part => !part.Fixed && (part.Out.Clear.Any(behind.Contains) || IsHeldBehind(held[part.Id], behind)))
                .SelectMany(part => Leaves(part.Id)));
            behind.UnionWith(structure.SubAssemblies.Where(group => group.Out.Clear.Any(behind.Contains))
                .Select(group => Fact.Off(group.Id)));
            behind.UnionWith(structure.Spaces.Where(space => space.ClosedBy.Any(unit => behind.Contains(Fact.Off(unit))))
                .Select(space => Fact.Reach(space.Id)));
        }

        return behind;
    }

    private static Fact[] Leaves(string part) => [Fact.Off(part), Fact.Free(part)];

    /// <summary>On the bench its parts are off.</summary>
    private static IEnumerable<Fact> Needs(Joint joint, Way way) =>
        way.Where == WorkPlace.OnBench ? way.Clear.Concat(joint.Holds.Select(Fact.Off)) : way.Clear;

    /// <summary>All that holds it lies behind. What is held elsewhere too can come with its neighbours.</summary>
    private static bool IsHeldBehind(IEnumerable<Fact> joints, HashSet<Fact> behind) => joints.Any() && joints.All(behind.Contains);
}
