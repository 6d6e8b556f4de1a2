namespace Refettle.Tests.Access;

/// <summary>What burns near a joint at a moment, from the words of the design alone: fuel system parts,
/// brake lines with fluid, airbags near it that are neither off nor made safe. Near: the same zone, a zone that either of the two says is
/// near, any zone where the joint's own says nothing, what its parts are joined to, and what runs on
/// through joints into such a zone.</summary>
internal static class FireOracle
{
    public static bool MakesFire(Joint joint, Way way) =>
        way.Tool.Contains("torch") || way.Tool.Contains("grinder") || way.Tool.Contains("reciprocating saw") || way.Tool.Contains("cut-off")
        || (joint.Kind == JointKind.Weld && way.Where == WorkPlace.OnCar);

    /// <param name="off">Parts off the car.</param>
    /// <param name="states">States brought about.</param>
    public static IEnumerable<string> Burning(Car car, Joint joint, Way way, IReadOnlySet<string> off, IReadOnlySet<string> states)
    {
        var byName = car.Structure.Parts.ToDictionary(part => part.Id);
        var held = joint.Holds.Select(name => byName[name]).ToList();
        foreach (var part in car.Structure.Parts)
        {
            var isHeld = held.Contains(part);
            if (isHeld && part.Hazards.Any(hazard => hazard is Hazard.Fuel or Hazard.Airbag))
                yield return $"{part.Id} is worked on itself";
            else if (way.Where == WorkPlace.OnCar && !off.Contains(part.Id) && IsNear(car, held, part) && Threatens(part, states))
                yield return part.Id;
        }
    }

    private static bool Threatens(Part part, IReadOnlySet<string> states) => part.Hazards.Contains(Hazard.Fuel)
        || (part.Hazards.Contains(Hazard.BrakeFluid) && !states.Contains("brakes-drained"))
        || (part.Hazards.Contains(Hazard.Airbag) && !states.Contains("airbags-safe"));

    private static bool IsNear(Car car, List<Part> held, Part part)
    {
        var own = held.Where(one => !one.Fixed).ToList();
        if (own.Count == 0 || own.Exists(one => SaysNothing(car, one.Zone)))
            return true;
        string[] zones = [part.Zone, .. car.Structure.Joints.Where(joint => joint.Holds.Contains(part.Id)).SelectMany(joint => joint.Holds)
            .Select(name => car.Structure.Parts.Single(other => other.Id == name)).Where(other => !other.Fixed)
            .Select(other => other.Zone)];
        return part.Zone == Zone.WholeCar
            || own.Exists(one => zones.Any(zone => zone == one.Zone || Says(car, one.Zone, zone) || Says(car, zone, one.Zone)));
    }

    private static bool SaysNothing(Car car, string zone) => car.Structure.Zones.All(known => known.Id != zone || known.Near.Count == 0);

    private static bool Says(Car car, string zone, string other) =>
        car.Structure.Zones.Any(known => known.Id == zone && known.Near.Contains(other));
}
