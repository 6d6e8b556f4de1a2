using Refettle.Access;

namespace Refettle.Stuck;

/// <summary>Why a try may not be done now. A gate that is closed is closed: nothing offers the try.</summary>
public static class Gate
{
    /// <summary>All reasons, in words; empty when the gate is open.</summary>
    /// <param name="standing">The car at the moment of the try.</param>
    /// <param name="joint">The joint that is tried.</param>
    /// <param name="rung">The try.</param>
    /// <param name="atHand">What is in hand, and what rubber and plastic parts are shielded. Shielding serves nothing else.</param>
    /// <remarks>Near is: held by the joint, joined to what it holds, or in its zone or one that the zone says is near; where a zone says
    /// nothing, the whole car. Hot work rules ask for more (29 CFR 1910.252(a): combustibles 35 ft away, a fire watch of 30 minutes):
    /// the caution at the try says so.</remarks>
    public static ValueList<string> Of(CarStanding standing, Joint joint, Rung rung, AtHand atHand)
    {
        var reasons = new List<string>();
        if ((rung.Danger & Danger.Fire) != 0)
            reasons.AddRange(NearBy(standing, joint).SelectMany(part => FireReasons(standing, part)));
        if (rung.Danger != Danger.None)
            reasons.AddRange(NearBy(standing, joint).SelectMany(part => HeatReasons(part, joint, atHand)));
        reasons.AddRange(rung.Destroys.Where(thing => !atHand.InHand.Contains(thing)).Select(thing => $"{thing}: not in hand, and this destroys it"));
        return reasons.Distinct().ToValueList();
    }

    private static IEnumerable<string> FireReasons(CarStanding standing, Part part)
    {
        if (part.Hazards.Contains(Hazard.Fuel))
            yield return $"{part.Name}: fuel system, still on the car";
        if (part.Hazards.Contains(Hazard.BrakeFluid) && !standing.IsTrue(Fact.State("brakes-drained")))
            yield return $"{part.Name}: brake fluid in it, still on the car";
        if (part.Hazards.Contains(Hazard.Airbag) && !standing.IsTrue(Fact.State("airbags-safe")))
            yield return $"{part.Name}: airbag, not made safe";
    }

    private static IEnumerable<string> HeatReasons(Part part, Joint joint, AtHand atHand)
    {
        var softens = part.Hazards.Contains(Hazard.Rubber) || part.Hazards.Contains(Hazard.Plastic);
        if (softens && !joint.Holds.Contains(part.Id) && !atHand.Shielded.Contains(part.Id))
            yield return $"{part.Name}: rubber or plastic, neither off nor shielded";
    }

    private static IEnumerable<Part> NearBy(CarStanding standing, Joint joint)
    {
        var neighbours = joint.Holds.SelectMany(standing.JointsOf).SelectMany(other => other.Holds).ToHashSet();
        var zones = joint.Holds.Select(part => standing.Parts[part]).Where(part => !part.Fixed).Select(part => part.Zone).ToHashSet();
        var isWholeCar = zones.Count == 0 || zones.Any(zone => !standing.Zones.TryGetValue(zone, out var known) || known.Near.Count == 0);
        var reached = zones.SelectMany(zone => standing.Zones.TryGetValue(zone, out var known) ? known.Near : []).Concat(zones).ToHashSet();
        return standing.Parts.Values.Where(part => !standing.IsTrue(Fact.Off(part.Id))
            && (isWholeCar || neighbours.Contains(part.Id) || reached.Contains(part.Zone) || part.Zone == Zone.WholeCar));
    }
}

/// <summary>What the person at the joint says is ready.</summary>
/// <param name="InHand">Things in hand that a try destroys: <c>nut</c>, <c>bush</c>.</param>
/// <param name="Shielded">Parts of rubber or plastic that are shielded from heat and sparks.</param>
public sealed record AtHand(ValueList<string> InHand, ValueList<string> Shielded)
{
    public static AtHand Nothing { get; } = new([], []);
}
