namespace Refettle.Sheets;

/// <summary>What a car sheet says: the head and what the car is made of.</summary>
public sealed record CarSheet
{
    public string Name { get; init; } = "";

    public int? Year { get; init; }

    /// <summary>ISO 4217 code.</summary>
    public string Currency { get; init; } = "EUR";

    public Structure Structure { get; init; } = Structure.Empty;
}
