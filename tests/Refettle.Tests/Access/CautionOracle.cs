namespace Refettle.Tests.Access;

/// <summary>What a step needs to be warned of, worked out from the facts of the car alone: it shares
/// nothing with what attaches the cautions. Each row names who asks for it.</summary>
internal static class CautionOracle
{
    /// <summary>The rows that ask for a caution at a step and find none: words that some one caution must have.</summary>
    /// <param name="fact">What is done, or undone at refit.</param>
    /// <param name="tool">Null at refit, where only facts of the car count.</param>
    public static IEnumerable<string> Lacking(Car car, Fact fact, string? tool, string posture, IEnumerable<string> cautions)
    {
        var said = cautions.Select(caution => caution.ToLowerInvariant()).ToList();
        return Needed(car, fact, (tool ?? "").ToLowerInvariant(), posture)
            .Where(needed => !said.Exists(
                caution => Array.TrueForAll(needed.Words, word => caution.Contains(word, StringComparison.Ordinal))))
            .Select(needed => $"{fact}: {needed.Row}");
    }

    private static IEnumerable<(string Row, string[] Words)> Needed(Car car, Fact fact, string tool, string posture)
    {
        var hazards = Touched(car, fact).SelectMany(part => part.Hazards).ToHashSet();
        if (hazards.Contains(Hazard.Fuel))
            yield return ("fuel: no ignition, outdoors, no pit (HSE INDG331)", ["fuel", "no flame", "outdoors", "pit"]);
        if (hazards.Contains(Hazard.BrakeFluid))
            yield return ("brake fluid strips paint and harms skin (FMVSS 116 glycol fluids)", ["brake fluid", "paint", "skin"]);
        if (hazards.Contains(Hazard.Airbag))
            yield return ("airbag: battery off and a wait as the maker states, the longest where he does not (service texts: 10 s to 20 min)", ["airbag", "battery off", "maker", "longest"]);
        if (hazards.Contains(Hazard.SpringLoad) || tool.Contains("spring compressor"))
            yield return ("spring: rated compressor, no impact tool", ["spring", "rated compressor", "impact"]);
        if (hazards.Contains(Hazard.Refrigerant))
            yield return ("refrigerant: recovered by a licensed shop (local law)", ["refrigerant", "licensed"]);
        if (hazards.Contains(Hazard.FrictionDust))
            yield return ("asbestos: no dry brushing, no compressed air (29 CFR 1910.1001 App F)",
                ["asbestos", "never dry brushing", "compressed air"]);
        if (hazards.Contains(Hazard.HotCoolant))
            yield return ("coolant scalds", ["coolant", "cold engine"]);
        if (hazards.Contains(Hazard.BatteryAcid))
            yield return ("battery: acid and hydrogen", ["battery", "acid", "hydrogen"]);
        if (hazards.Contains(Hazard.Mercury))
            yield return ("mercury: never a vacuum cleaner (EPA)", ["mercury", "never a vacuum cleaner"]);
        if (hazards.Contains(Hazard.Asbestos))
            yield return ("asbestos: no dry brushing, no compressed air (29 CFR 1910.1001 App F)",
                ["asbestos", "never dry brushing", "compressed air"]);
        if (posture == "under")
            yield return ("under a vehicle: on stands, never a jack alone (HSE INDG434)", ["under", "stands", "never under a jack alone"]);
        if (tool.Split(' ').Intersect(["jack", "hoist", "crane"]).Any())
            yield return ("a load raised is blocked at once (29 CFR 1910.244)", ["raised load", "blocked"]);
        foreach (var row in OfFire(car, fact, tool))
            yield return row;
        if (fact.Kind == FactKind.State
            && car.Structure.States.Single(state => state.Id == fact.Subject) is { IsStance: true, Id: not Car.OnWheels })
            yield return ("raising a vehicle: rated stands, chocks, level ground (HSE notice)", ["stands", "chocked", "level"]);
    }

    private static IEnumerable<(string, string[])> OfFire(Car car, Fact fact, string tool)
    {
        var (flame, cut, heat) =
            (tool.Contains("torch"), tool.Contains("grinder") || tool.Contains("reciprocating saw"), tool.Contains("induction"));
        if (flame || cut)
            yield return ("hot work: combustibles away, extinguisher, watch of 30 minutes (29 CFR 1910.252(a))",
                ["flame", "extinguisher", "fire watch", "30 minutes"]);
        if (!flame && !heat)
            yield break;
        yield return ("fumes of plating, no chlorinated solvent near heat (OSHA), no flame on fluoro-rubber (HSE)",
            ["fumes", "chlorinated", "fluoro-rubber"]);
        if (car.Structure.Joints.FirstOrDefault(joint => fact == Fact.Open(joint.Id)) is { Thread: not null })
            yield return ("a heated quenched and tempered bolt is scrap (ISO 898-1)", ["heated", "scrap"]);
    }

    private static IEnumerable<Part> Touched(Car car, Fact fact)
    {
        var structure = car.Structure;
        string[] names = fact.Kind switch
        {
            FactKind.Open => [.. structure.Joints.Single(joint => joint.Id == fact.Subject).Holds],
            FactKind.Off => structure.SubAssemblies.FirstOrDefault(unit => unit.Id == fact.Subject) is { } unit
                ? [.. unit.Members]
                : [fact.Subject],
            _ => [],
        };
        return structure.Parts.Where(part => names.Contains(part.Id));
    }
}
