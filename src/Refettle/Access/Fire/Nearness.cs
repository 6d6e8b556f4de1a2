namespace Refettle.Access.Fire;

/// <summary>What is near the place where parts are worked on.</summary>
/// <remarks>
/// For heat: what the parts are joined to, and what is in their zone. For flame, sparks and cutting
/// besides all that is in the zones said to be near, whichever of two zones says so; where a zone says nothing, the whole car. A body shell
/// is as large as the car: what hangs on it counts in the zones around only, and so does everything else that flame could reach. A pipe or
/// cable lies in one zone by the sheet and runs on to what it is joined to: it counts in all their zones.
/// </remarks>
public static class Nearness
{
    /// <param name="standing">The car; what is off counts too.</param>
    /// <param name="held">The parts that are worked on; none for work that has no place: then everything is near.</param>
    /// <param name="acrossZones">For flame, sparks and cutting.</param>
    public static IEnumerable<Part> Of(CarStanding standing, ValueList<string> held, bool acrossZones)
    {
        var (small, shells) = (held.Where(part => !standing.Parts[part].Fixed).ToList(), held.Where(part => standing.Parts[part].Fixed));
        var (joined, joinedToShell) = (JoinedTo(standing, small), acrossZones ? [] : JoinedTo(standing, shells));
        var zones = small.Select(part => standing.Parts[part].Zone).ToHashSet();
        var isAlone = zones.Count == 0 || zones.Any(zone => !standing.Zones.TryGetValue(zone, out var known) || known.Near.Count == 0);
        var around = Around(standing, zones);
        var running = acrossZones && !isAlone ? RunningInto(standing, around) : [];
        return standing.Parts.Values.Where(part => joined.Contains(part.Id) || part.Zone == Zone.WholeCar || zones.Contains(part.Zone)
            || (acrossZones
                ? isAlone || around.Contains(part.Zone) || running.Contains(part.Id)
                : joinedToShell.Contains(part.Id) && (isAlone || around.Contains(part.Zone))));
    }

    private static HashSet<string> Around(CarStanding standing, HashSet<string> zones) =>
    [
        .. zones,
        .. zones.SelectMany(zone => standing.Zones.TryGetValue(zone, out var known) ? known.Near : []),
        .. standing.Zones.Values.Where(zone => zone.Near.Any(zones.Contains)).Select(zone => zone.Id),
    ];

    /// <summary>What is joined to something in these zones.</summary>
    private static HashSet<string> RunningInto(CarStanding standing, HashSet<string> zones) =>
        standing.Joints.Values
            .Where(joint => joint.Holds.Any(part => !standing.Parts[part].Fixed && zones.Contains(standing.Parts[part].Zone)))
            .SelectMany(joint => joint.Holds).ToHashSet();

    private static HashSet<string> JoinedTo(CarStanding standing, IEnumerable<string> parts) =>
        parts.SelectMany(standing.JointsOf).SelectMany(other => other.Holds).ToHashSet();
}
