namespace Refettle.Kits;

/// <summary>Kits that bring what a loose end waits for.</summary>
public static class Fillers
{
    /// <summary>Those with a part or sub-assembly of its role, to be added where it looks.</summary>
    public static ValueList<Kit> Of(LooseEnd end, IEnumerable<Kit> kits) =>
        kits.Where(kit => Brings(kit.Template, end.Role) && Fits(kit, end.Spot)).ToValueList();

    private static bool Brings(Structure template, string role) =>
        template.Parts.Any(part => part.Roles.Contains(role)) || template.SubAssemblies.Any(unit => unit.Roles.Contains(role));

    private static bool Fits(Kit kit, Spot spot) => kit.Spots.Count == 0 || spot == Spot.None
        || kit.Spots.Any(own => own == spot || (own.Side() == spot.Side() && !(own.IsCorner() && spot.IsCorner())));
}
