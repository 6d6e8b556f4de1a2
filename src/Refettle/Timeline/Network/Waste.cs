namespace Refettle.Timeline.Network;

/// <summary>What becomes waste, kept apart kind by kind.</summary>
public enum WasteKind
{
    Refrigerant,
    Fuel,
    BrakeFluid,
    Coolant,
    OtherFluid,
    SuspectedAsbestos,
    Dust,
    Paint,
    Solvent,
    Rags,
    Battery,
    Airbag,
    Mercury,
    Tyre,
}

/// <summary>One kind of waste of a plan.</summary>
/// <param name="Says">What it is.</param>
/// <param name="From">What it comes from, by name.</param>
/// <param name="Keep">How it is kept until then, and what can hurt.</param>
/// <param name="HandIn">Where to.</param>
public sealed record Waste(WasteKind Kind, string Says, ValueList<string> From, string Keep, string HandIn)
{
    /// <summary>For lists: <c>Coolant: your local collection point …</c></summary>
    public string Line() =>
        $"{Says}{(From.Count == 0 ? "" : $" ({string.Join(", ", From.Take(4))}{(From.Count > 4 ? $" and {From.Count - 4} more" : "")})")}: {HandIn}";
}
