namespace Refettle.Timeline.Network;

/// <summary>How each kind of waste is kept and where it goes. Common practice where no source stands
/// beside it; local rules come first.</summary>
public static class WasteRules
{
    private const string Point = "your local collection point; rules differ";

    /// <param name="says">What it is.</param>
    /// <param name="from">What it comes from.</param>
    public static Waste Of(WasteKind kind, string says, IEnumerable<string> from) =>
        new(kind, says, from.Distinct().ToValueList(), Keep(kind), HandIn(kind));

    private static string Keep(WasteKind kind) => kind switch
    {
        // Regulation (EU) 2024/573, which repealed (EU) 517/2014: no release, recovery by qualified people only.
        WasteKind.Refrigerant =>
            "never let out. Licensed people recover it before a line is opened; it stays with them (Regulation (EU) 2024/573, before it 517/2014, or its local counterpart).",
        WasteKind.Fuel => "closed, approved cans, outdoors, away from flame and spark; no drain, no glass.",
        WasteKind.BrakeFluid =>
            "a closed, labelled can of its own, nothing mixed in. It strips paint and harms skin and eyes; never down a drain.",
        WasteKind.Coolant => "a closed, labelled can of its own. Sweet and poisonous: away from children and animals; never down a drain.",
        WasteKind.OtherFluid =>
            "a closed, labelled can for each kind: what is mixed may be refused. Never down a drain or into the ground.",
        // 29 CFR 1910.1001 App. F: wet or with fine filter, no dry brushing, no open compressed air; sealed bags with a label.
        WasteKind.SuspectedAsbestos =>
            "asbestos until a laboratory says otherwise. Wet; never compressed air, dry brush or grinder; tight mask for fine dust (P3); into two bags, sealed and labelled \"suspected asbestos\", wipes with it.",
        WasteKind.Dust =>
            "old paint may hold lead or chromate: mask, vacuum with a fine filter, no dry sweeping; damp into a closed bag, no spark near it.",
        WasteKind.Paint =>
            "closed in their own tins, hardener and paint apart, away from flame. What is mixed grows hot as it hardens: outdoors, in an open metal tin.",
        // OSHA on chlorinated solvents near heat or arc: phosgene.
        WasteKind.Solvent =>
            "a closed, labelled metal can, cool, away from flame; chlorinated ones apart and never near heat or arc (phosgene).",
        // 29 CFR 1926.252(e): solvent waste and oily rags in fire resistant covered containers.
        WasteKind.Rags =>
            "they heat themselves and catch fire: a closed metal box from the first one on, emptied daily; never a heap, a bag or a pocket.",
        WasteKind.Battery => "upright, poles covered, in a tray; acid and hydrogen, no sparks.",
        WasteKind.Airbag =>
            "never opened, cut, heated or put in a bin: it goes off. Cover up, connector as the maker's manual says, nothing lying on it.",
        // EPA on mercury spills: never a vacuum cleaner, it spreads the vapour.
        WasteKind.Mercury => "whole, padded, in a closed, labelled box. Broken: everyone out, fresh air, never a vacuum cleaner.",
        _ => "not burnt, not buried.",
    };

    private static string HandIn(WasteKind kind) => kind switch
    {
        WasteKind.Refrigerant => "nothing to carry away; keep the receipt of those who recovered it",
        WasteKind.SuspectedAsbestos => $"{Point}: announced beforehand; some want a licensed firm",
        WasteKind.OtherFluid => $"where new oil is sold, where that is the rule, or {Point}",
        WasteKind.Battery => $"whoever sells the new one, or {Point}",
        WasteKind.Airbag => "a licensed workshop or dismantler; ask before it is carried there; rules differ",
        WasteKind.Tyre => $"a tyre dealer, often for a fee, or {Point}",
        _ => Point,
    };
}
