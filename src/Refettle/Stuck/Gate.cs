using Refettle.Access;

namespace Refettle.Stuck;

/// <summary>Why a try may not be done now. A gate that is closed is closed: nothing offers the try.</summary>
public static class Gate
{
    private const string Soft = "rubber or plastic, neither off nor shielded";

    private const string NotInHand = "not in hand, and this destroys it";

    /// <summary>All that closes the gate, by cause; empty when it is open.</summary>
    /// <param name="standing">The car at the moment of the try.</param>
    /// <param name="joint">The joint that is tried.</param>
    /// <param name="rung">The try.</param>
    /// <param name="atHand">What is in hand, and what rubber and plastic parts are shielded. Shielding serves nothing else.</param>
    /// <remarks>Near, for heat, is what the joint's parts are joined to and what is in their zone; for flame, sparks and cutting also the zones
    /// that the zone says are near, or the whole car where it says nothing. Hot work rules ask for more (29 CFR 1910.252(a): combustibles
    /// 35 ft away, a fire watch of 30 minutes): the caution at the try says so.</remarks>
    public static ValueList<ClosedBy> Of(CarStanding standing, Joint joint, Rung rung, AtHand atHand)
    {
        var causes = new List<(string Cause, string Thing)>();
        if ((rung.Danger & Danger.Fire) != 0)
            causes.AddRange(NearBy(standing, joint, acrossZones: true).SelectMany(part => Burns(standing, part), (part, cause) => (cause, part.Name)));
        if (rung.Danger != Danger.None)
            causes.AddRange(NearBy(standing, joint, acrossZones: false).Where(part => Softens(part, joint, atHand)).Select(part => (Soft, part.Name)));
        causes.AddRange(rung.Destroys.Where(thing => !atHand.InHand.Contains(thing)).Select(thing => (NotInHand, thing)));
        return causes.GroupBy(cause => cause.Cause, cause => cause.Thing)
            .Select(group => new ClosedBy(group.Key, group.Distinct().Order(StringComparer.Ordinal).ToValueList())).ToValueList();
    }

    private static IEnumerable<string> Burns(CarStanding standing, Part part)
    {
        if (part.Hazards.Contains(Hazard.Fuel))
            yield return "fuel system, still on the car";
        if (part.Hazards.Contains(Hazard.BrakeFluid) && !standing.IsTrue(Fact.State("brakes-drained")))
            yield return "brake fluid in it, still on the car";
        if (part.Hazards.Contains(Hazard.Airbag) && !standing.IsTrue(Fact.State("airbags-safe")))
            yield return "airbag, not made safe";
    }

    private static bool Softens(Part part, Joint joint, AtHand atHand) =>
        (part.Hazards.Contains(Hazard.Rubber) || part.Hazards.Contains(Hazard.Plastic)) && !joint.Holds.Contains(part.Id)
        && !atHand.Shielded.Contains(part.Id) && !atHand.Shielded.Contains(AtHand.All);

    private static IEnumerable<Part> NearBy(CarStanding standing, Joint joint, bool acrossZones)
    {
        var neighbours = joint.Holds.SelectMany(standing.JointsOf).SelectMany(other => other.Holds).ToHashSet();
        var zones = joint.Holds.Select(part => standing.Parts[part]).Where(part => !part.Fixed).Select(part => part.Zone).ToHashSet();
        var isWholeCar = acrossZones && (zones.Count == 0 || zones.Any(zone => !standing.Zones.TryGetValue(zone, out var known) || known.Near.Count == 0));
        var reached = zones.SelectMany(zone => acrossZones && standing.Zones.TryGetValue(zone, out var known) ? known.Near : []).Concat(zones).ToHashSet();
        return standing.Parts.Values.Where(part => !standing.IsTrue(Fact.Off(part.Id))
            && (isWholeCar || neighbours.Contains(part.Id) || reached.Contains(part.Zone) || part.Zone == Zone.WholeCar));
    }
}

/// <summary>What the person at the joint says is ready.</summary>
/// <param name="InHand">Things in hand that a try destroys: <c>nut</c>, <c>bush</c>.</param>
/// <param name="Shielded">Parts of rubber or plastic that are shielded from heat and sparks, or <see cref="All"/>.</param>
public sealed record AtHand(ValueList<string> InHand, ValueList<string> Shielded)
{
    /// <summary>Stands for every part of rubber or plastic.</summary>
    public const string All = "all";

    public static AtHand Nothing { get; } = new([], []);
}

/// <summary>What closes a gate.</summary>
/// <param name="Cause">Why, in words.</param>
/// <param name="Things">The parts or things it holds of.</param>
public sealed record ClosedBy(string Cause, ValueList<string> Things);
