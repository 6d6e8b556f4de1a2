namespace Refettle.Logbook;

/// <summary>What facts speak of.</summary>
internal static class Things
{
    /// <summary>Whether the thing that a fact speaks of is among those known.</summary>
    public static bool Exists(Fact fact, IReadOnlySet<Thing> known) => fact.Kind switch
    {
        FactKind.Open => known.Contains(new(ThingKind.Joint, fact.Subject)),
        FactKind.State => known.Contains(new(ThingKind.State, fact.Subject)),
        FactKind.Reach => known.Contains(new(ThingKind.Space, fact.Subject)),
        FactKind.Free => known.Contains(new(ThingKind.Part, fact.Subject)),
        _ => known.Contains(new(ThingKind.Part, fact.Subject)) || known.Contains(new(ThingKind.SubAssembly, fact.Subject)),
    };
}
