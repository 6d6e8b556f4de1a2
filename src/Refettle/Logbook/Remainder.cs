namespace Refettle.Logbook;

/// <summary>What of a sub-assembly still hangs together: the most members that closed joints connect (of
/// equally many those with the member that is named first), and members that no joint inside it was ever described for. The rest was
/// split off and stays where it is.</summary>
internal static class Remainder
{
    /// <param name="open">Joints that are open, by identifier.</param>
    public static List<string> Of(SubAssembly group, StructureBuilder car, HashSet<string> open)
    {
        var inner = group.Members.SelectMany(car.JointsOf).Distinct().Select(joint => car.Joints[joint])
            .Where(joint => joint.Holds.Count(group.Members.Contains) > 1).ToList();
        var clusters = new List<HashSet<string>>();
        foreach (var member in group.Members.Where(member => !clusters.Exists(cluster => cluster.Contains(member))))
            clusters.Add(Cluster(member, group.Members, inner.Where(joint => !open.Contains(joint.Id)).ToList()));
        var largest = clusters.MaxBy(cluster => cluster.Count) ?? [];
        return group.Members.Where(member => largest.Contains(member) || !inner.Exists(joint => joint.Holds.Contains(member))).ToList();
    }

    private static HashSet<string> Cluster(string first, ValueList<string> members, List<Joint> closed)
    {
        var cluster = new HashSet<string> { first };
        for (var grown = true; grown;)
        {
            var size = cluster.Count;
            foreach (var joint in closed.Where(joint => joint.Holds.Any(cluster.Contains)))
                cluster.UnionWith(joint.Holds.Where(members.Contains));
            grown = cluster.Count > size;
        }

        return cluster;
    }
}
