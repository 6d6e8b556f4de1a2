namespace Refettle.Access.Fire;

/// <summary>Rubber and plastic that heat, flame or sparks would hurt.</summary>
public static class SoftParts
{
    /// <summary>Those near the parts that are worked on and still on the car; what is worked on itself is the tool's business.</summary>
    public static IEnumerable<Part> Near(CarStanding standing, ValueList<string> held) => Nearness.Of(standing, held, acrossZones: false)
        .Where(part => !standing.IsTrue(Fact.Off(part.Id)) && !held.Contains(part.Id)
            && part.Hazards.Any(hazard => hazard is Hazard.Rubber or Hazard.Plastic));
}
