using Refettle.Access;
using Refettle.Access.Fire;

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
    /// <remarks>What is near: <see cref="Nearness"/>. Hot work rules ask for more (29 CFR 1910.252(a): combustibles
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
        var threats = Threats(standing, joint, rung, atHand).ToList();
        if (threats.Exists(threat => threat.Mend is null))
            return null;
        var facts = threats.Select(threat => threat.Mend!.Value).Concat(reach?.Once.Where(fact => !standing.IsTrue(fact)) ?? []).Distinct()
            .Order().ToValueList();
        return facts.Any(fact => fact.Kind == FactKind.Off && standing.Parts[fact.Subject].Fixed) ? null : facts;
    }

    /// <summary>The names of rubber and plastic parts that a try would hurt unless they are shielded.</summary>
    public static IEnumerable<string> WouldNeedShield(CarStanding standing, Joint joint, Rung rung) =>
        Threats(standing, joint, rung, AtHand.Nothing).Where(threat => threat.Cause == Soft).Select(threat => threat.Part.Name);

    /// <summary>What the try destroys and is not in hand, unless the owner gave leave for that. He can give it for nothing else.</summary>
    private static IEnumerable<string> Missing(Joint joint, Rung rung, AtHand atHand, Car car) =>
        car.LeaveForMissing.Any(leave => leave.Joint == joint.Id && leave.Rung == rung.Id)
            ? []
            : rung.Destroys.Where(thing => !atHand.InHand.Contains(thing));

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

    private static IEnumerable<Burning> Threats(CarStanding standing, Joint joint, Rung rung, AtHand atHand)
    {
        var burns = (rung.Danger & Danger.Fire) == 0
            ? []
            : FireNeeds.Near(standing, joint.Holds).Where(one => !FireNeeds.IsAway(standing, one));
        var softens = rung.Danger == Danger.None ? [] : SoftParts.Near(standing, joint.Holds)
            .Where(part => !atHand.Shielded.Contains(part.Id) && !atHand.Shielded.Contains(AtHand.All))
            .Select(part => new Burning(part, Soft, Fact.Off(part.Id)));
        return burns.Concat(softens);
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
