using Refettle.Access.Derivation;

namespace Refettle.Access.Ordering;

/// <summary>What one has in hand and how one works; null where a step leaves it as it is.</summary>
internal readonly record struct Setting(string? Tool, string? Place, string? Posture, string? Stance)
{
    /// <summary>What a way asks for. Conclusions (a part is free, a space is open) ask for nothing.</summary>
    public static Setting Of(WaySource way, CarStanding standing)
    {
        if (way.Fact.Kind is FactKind.Free or FactKind.Reach)
            return default;
        var place = Workplace.Zone(way, standing);
        return new(Workplace.Tool(way, standing), place, Workplace.Posture(way, place, standing), way.Stance);
    }
}
