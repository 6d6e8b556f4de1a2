using Refettle.Access.Derivation;

namespace Refettle.Access.Fire;

/// <summary>What has to be off or made safe before flame, sparks or a cut: fuel system parts, brake lines with
/// fluid in them, airbags near it.</summary>
public static class FireNeeds
{
    private static readonly Fact _drained = Fact.State("brakes-drained");

    private static readonly Fact _safe = Fact.State("airbags-safe");

    /// <summary>Everything near the parts that would burn or go off, whether it still is on the car or not,
    /// with what takes the threat away.</summary>
    /// <param name="standing">The car.</param>
    /// <param name="held">The parts that are worked on.</param>
    public static IEnumerable<Burning> Near(CarStanding standing, ValueList<string> held) =>
        Nearness.Of(standing, held, acrossZones: true).SelectMany(part => Of(standing, part, held));

    /// <summary>Whether it does not threaten any more.</summary>
    public static bool IsAway(CarStanding standing, Burning burning) =>
        burning.Mend is { } mend && (standing.IsTrue(mend) || standing.IsTrue(Fact.Off(burning.Part.Id)));

    /// <summary>What a hot way needs beyond what its sheet says, whether it holds already or not;
    /// null when it may never be used. Nothing for a way without fire.</summary>
    /// <param name="onBench">Then only what is worked on itself counts.</param>
    internal static IReadOnlyList<Fact>? Of(CarStanding standing, Danger danger, ValueList<string> held, bool onBench)
    {
        if ((danger & Danger.Fire) == 0)
            return [];
        var burning = Near(standing, held).Where(one => !onBench || one.Mend is null).ToList();
        return burning.Exists(one => one.Mend is null) ? null : [.. burning.Select(one => Away(standing, one)).Distinct().Order()];
    }

    /// <summary>Of a way of a joint.</summary>
    internal static IReadOnlyList<Fact>? Of(CarStanding standing, Joint joint, Way way) =>
        Of(standing, HotWork.Of(way, joint), joint.Holds, way.Where == WorkPlace.OnBench);

    /// <summary>The parts that a way is worked at: of a state none, for it has no place.</summary>
    internal static ValueList<string> HeldBy(Fact fact, CarStanding standing) => fact.Kind switch
    {
        FactKind.Open => standing.Joints[fact.Subject].Holds,
        FactKind.Off when standing.SubAssemblies.TryGetValue(fact.Subject, out var unit) => unit.Members,
        FactKind.Off => [fact.Subject],
        _ => [],
    };

    /// <summary>What is off already need not be drained too.</summary>
    private static Fact Away(CarStanding standing, Burning burning) =>
        standing.IsTrue(Fact.Off(burning.Part.Id)) ? Fact.Off(burning.Part.Id) : burning.Mend!.Value;

    private static IEnumerable<Burning> Of(CarStanding standing, Part part, ValueList<string> held)
    {
        var isHeld = held.Contains(part.Id);
        if (part.Hazards.Contains(Hazard.Fuel))
            yield return isHeld
                ? new(part, "fuel in it, on the car or off", null)
                : new(part, "fuel system, still on the car", Fact.Off(part.Id));
        if (part.Hazards.Contains(Hazard.BrakeFluid))
            yield return new(part, "brake fluid in it, still on the car",
                standing.States.ContainsKey(_drained.Subject) ? _drained : Fact.Off(part.Id));
        if (part.Hazards.Contains(Hazard.Airbag))
            yield return isHeld ? new(part, "airbag, on the car or off", null)
                : new(part, "airbag, not made safe", standing.States.ContainsKey(_safe.Subject) ? _safe : Fact.Off(part.Id));
    }
}

/// <summary>A part near a fire that would burn or go off.</summary>
/// <param name="Cause">Why, in words.</param>
/// <param name="Mend">What takes the threat away; null when nothing does, as it is itself what is worked on.</param>
public sealed record Burning(Part Part, string Cause, Fact? Mend);
