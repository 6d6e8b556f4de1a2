using Refettle.Access.Derivation;

namespace Refettle.Access.Ordering;

/// <summary>Where, how and with what a way is worked.</summary>
internal static class Workplace
{
    public const string Bench = "bench";

    /// <summary>The posture of who works below the car.</summary>
    public const string Under = "under";

    private const string BareHands = "hands";

    /// <summary>The tool that decides the way.</summary>
    public static string? Tool(WaySource way, CarStanding standing)
    {
        var tool = way.Way?.Tool ?? OutOf(way, standing)?.Tool;
        return tool == BareHands ? null : tool;
    }

    /// <summary>The zone one works in; the bench for bench work; null for states, which have no place.</summary>
    public static string? Zone(WaySource way, CarStanding standing)
    {
        if (way.Way?.Where == WorkPlace.OnBench)
            return Bench;
        return way.Fact.Kind switch
        {
            FactKind.Open => ZoneOf(standing.Joints[way.Fact.Subject], standing),
            FactKind.Off when standing.Parts.TryGetValue(way.Fact.Subject, out var part) => part.Zone,
            FactKind.Off => standing.Parts[standing.SubAssemblies[way.Fact.Subject].Members[0]].Zone,
            _ => null,
        };
    }

    public static string? Posture(WaySource way, string? place, CarStanding standing) =>
        way.Way?.Posture
        ?? (place == Bench ? Bench : place is not null && standing.Zones.TryGetValue(place, out var zone) ? zone.Posture : null);

    public static WayOut? OutOf(WaySource way, CarStanding standing) =>
        way.Fact.Kind != FactKind.Off || way.Name.StartsWith("with ", StringComparison.Ordinal) ? null
        : standing.Parts.TryGetValue(way.Fact.Subject, out var part) ? part.Out
        : standing.SubAssemblies[way.Fact.Subject].Out;

    /// <summary>The zone of the first part that is not fixed: one works where the lesser part is.</summary>
    private static string ZoneOf(Joint joint, CarStanding standing)
    {
        var part = joint.Holds.Select(name => standing.Parts[name]).FirstOrDefault(part => !part.Fixed);
        return (part ?? standing.Parts[joint.Holds[0]]).Zone;
    }
}
