namespace Refettle.Access;

/// <summary>What can hurt or burn when a product goes on. Shown at every session; there is no switch for it.</summary>
/// <remarks>Common practice where no source is named; the product's safety sheet and local rules come first.</remarks>
public static class CoatingCautions
{
    /// <summary>When the safety sheet is not entered, all that it could name is said.</summary>
    public static ValueList<string> Of(CoatingProduct product)
    {
        var unknown = product.Hazards.Count == 0;
        bool Has(CoatingHazard hazard) => unknown || product.Hazards.Contains(hazard);
        string?[] lines =
        [
            unknown
                ? "The safety sheet is not entered: everything it could name is taken to be in it. Read it before you open the tin."
                : null,
            Has(CoatingHazard.Isocyanate)
                ? "Isocyanate: air-fed breathing apparatus; filter masks are not enough (HSE, motor vehicle repair pages). A room needs half an hour and more of fresh air before the hood comes off; nobody else in it. Whoever wheezed once after it never sprays it again."
                : null,
            Has(CoatingHazard.Solvent)
                ? "Solvent vapour burns and lies low: no flame, heater, pilot light, spark or switch near it, neither while spraying nor while it dries. Never spray where a heater's flame burns. Fresh air, a mask for organic vapour, solvent-proof gloves."
                : null,
            Has(CoatingHazard.Acid)
                ? "Acid: goggles, gloves, water at hand. What is left under paint keeps it from curing: the sheet says whether to rinse. Springs and bolts of 10.9 and above are not derusted with acid: hydrogen can crack them."
                : null,
            Has(CoatingHazard.EpoxyResin)
                ? "Uncured epoxy makes skin allergic for good: gloves and sleeves, nothing on bare skin, no solvent to wash it off."
                : null,
            "Rust and old paint as dust: fine-filter mask and goggles, wet or with extraction; old paint may hold lead or chromate. A wire wheel throws wires.",
            "Leftovers, thinner and rags are hazardous waste by local rules, none of it down a drain. Rags with oil or solvent lie flat outdoors or under water in a closed tin: in a heap they can catch fire by themselves.",
        ];
        return lines.OfType<string>().ToValueList();
    }
}
