using Refettle.Access;

namespace Refettle.Stuck;

/// <summary>Why a try may not be done now. A gate that is closed is closed: nothing offers the try.</summary>
public static class Gate
{
    private const string Soft = "rubber or plastic, neither off nor shielded";

    private const string NotInHand = "not in hand, and this destroys it";

    private static readonly Fact Drained = Fact.State("brakes-drained");

    private static readonly Fact Safe = Fact.State("airbags-safe");

    /// <summary>All that closes the gate, by cause; empty when it is open.</summary>
    /// <param name="standing">The car at the moment of the try.</param>
    /// <param name="joint">The joint that is tried.</param>
    /// <param name="rung">The try.</param>
    /// <param name="atHand">What is in hand, and what rubber and plastic parts are shielded. Shielding serves nothing else.</param>
    /// <remarks>Near, for heat, is what the joint's parts are joined to and what is in their zone (a body shell is as large as the car: what hangs
    /// on it counts in the zones around only); for flame, sparks and cutting all in the zones that the zone says are near, or the whole car where it says nothing. Hot work rules ask for more (29 CFR 1910.252(a): combustibles
    /// 35 ft away, a fire watch of 30 minutes): the caution at the try says so.</remarks>
    public static ValueList<ClosedBy> Of(CarStanding standing, Joint joint, Rung rung, AtHand atHand)
    {
        var causes = Threats(standing, joint, rung, atHand).Select(threat => (threat.Cause, Thing: threat.Part.Name))
            .Concat(OutOfReach(standing, joint, rung))
            .Concat(Missing(joint, rung, atHand, standing.Car).Select(thing => (Cause: NotInHand, Thing: thing)));
        return causes.GroupBy(cause => cause.Cause, cause => cause.Thing)
            .Select(group => new ClosedBy(group.Key, group.Distinct().Order(StringComparer.Ordinal).ToValueList())).ToValueList();
    }

    /// <summary>What would have to become true for the gate to open, what is not in hand apart; null when nothing can open it.</summary>
    public static ValueList<Fact>? OpenedBy(CarStanding standing, Joint joint, Rung rung, AtHand atHand)
    {
        var reach = standing.Car.Reach.FirstOrDefault(one => one.Joint == joint.Id && one.Rung == rung.Id && !one.Reaches);
        if (reach is { Once.Count: 0 })
            return null;
        var facts = Threats(standing, joint, rung, atHand).Select(threat => threat.Mend).Concat(reach?.Once.Where(fact => !standing.IsTrue(fact)) ?? []).Distinct().Order().ToValueList();
        return facts.Any(fact => fact.Kind == FactKind.Off && standing.Parts[fact.Subject].Fixed) ? null : facts;
    }

    /// <summary>The names of rubber and plastic parts that a try would hurt unless they are shielded.</summary>
    public static IEnumerable<string> WouldNeedShield(CarStanding standing, Joint joint, Rung rung) =>
        Threats(standing, joint, rung, AtHand.Nothing).Where(threat => threat.Cause == Soft).Select(threat => threat.Part.Name);

    /// <summary>What the try destroys and is not in hand, unless the owner gave leave for that. He can give it for nothing else.</summary>
    private static IEnumerable<string> Missing(Joint joint, Rung rung, AtHand atHand, Car car) =>
        car.LeaveForMissing.Any(leave => leave.Joint == joint.Id && leave.Rung == rung.Id) ? [] : rung.Destroys.Where(thing => !atHand.InHand.Contains(thing));

    private static IEnumerable<(string Cause, string Thing)> OutOfReach(CarStanding standing, Joint joint, Rung rung)
    {
        foreach (var reach in standing.Car.Reach.Where(one => one.Joint == joint.Id && one.Rung == rung.Id && !one.Reaches))
        {
            if (reach.Once.Count == 0)
                yield return ("the tool does not reach", rung.Tool);
            foreach (var fact in reach.Once.Where(fact => !standing.IsTrue(fact)))
                yield return ("the tool does not reach before", fact.ToString());
        }
    }

    private static IEnumerable<Threat> Threats(CarStanding standing, Joint joint, Rung rung, AtHand atHand)
    {
        var burns = (rung.Danger & Danger.Fire) == 0 ? [] : NearBy(standing, joint, acrossZones: true).SelectMany(part => Burns(standing, part));
        var softens = rung.Danger == Danger.None ? [] : NearBy(standing, joint, acrossZones: false)
            .Where(part => Softens(part, joint, atHand)).Select(part => new Threat(part, Soft, Fact.Off(part.Id)));
        return burns.Concat(softens);
    }

    private static IEnumerable<Threat> Burns(CarStanding standing, Part part)
    {
        if (part.Hazards.Contains(Hazard.Fuel))
            yield return new(part, "fuel system, still on the car", Fact.Off(part.Id));
        if (part.Hazards.Contains(Hazard.BrakeFluid) && !standing.IsTrue(Drained))
            yield return new(part, "brake fluid in it, still on the car", standing.States.ContainsKey(Drained.Subject) ? Drained : Fact.Off(part.Id));
        if (part.Hazards.Contains(Hazard.Airbag) && !standing.IsTrue(Safe))
            yield return new(part, "airbag, not made safe", standing.States.ContainsKey(Safe.Subject) ? Safe : Fact.Off(part.Id));
    }

    private static bool Softens(Part part, Joint joint, AtHand atHand) =>
        (part.Hazards.Contains(Hazard.Rubber) || part.Hazards.Contains(Hazard.Plastic)) && !joint.Holds.Contains(part.Id)
        && !atHand.Shielded.Contains(part.Id) && !atHand.Shielded.Contains(AtHand.All);

    private static IEnumerable<Part> NearBy(CarStanding standing, Joint joint, bool acrossZones)
    {
        var (small, shells) = (joint.Holds.Where(part => !standing.Parts[part].Fixed).ToList(), joint.Holds.Where(part => standing.Parts[part].Fixed));
        var (joined, joinedToShell) = (JoinedTo(standing, small), JoinedTo(standing, shells));
        var zones = small.Select(part => standing.Parts[part].Zone).ToHashSet();
        var isAlone = zones.Count == 0 || zones.Any(zone => !standing.Zones.TryGetValue(zone, out var known) || known.Near.Count == 0);
        var around = zones.SelectMany(zone => standing.Zones.TryGetValue(zone, out var known) ? known.Near : []).Concat(zones).ToHashSet();
        return standing.Parts.Values.Where(part => !standing.IsTrue(Fact.Off(part.Id)) && (joined.Contains(part.Id) || part.Zone == Zone.WholeCar
            || zones.Contains(part.Zone) || ((acrossZones || joinedToShell.Contains(part.Id)) && (isAlone || around.Contains(part.Zone)))));
    }

    private static HashSet<string> JoinedTo(CarStanding standing, IEnumerable<string> parts) =>
        parts.SelectMany(standing.JointsOf).SelectMany(other => other.Holds).ToHashSet();

    /// <param name="Mend">What takes the threat away.</param>
    private sealed record Threat(Part Part, string Cause, Fact Mend);
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
