namespace Refettle;

/// <summary>A fact about the car that is neither a part nor a joint.</summary>
public sealed record State
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    /// <summary>Stances exclude each other (on its wheels, on stands …); other states, once brought about, last.</summary>
    public bool IsStance { get; init; }

    /// <summary>The methods to bring it about; a stance's minutes are for one change into it.</summary>
    public required ValueList<Way> Ways { get; init; }

    /// <summary>Parts that carry the car in this stance: they must be on it and sound.</summary>
    public ValueList<string> Supports { get; init; } = [];

    /// <summary>Fluids that it lets out of the car: fuel, brake fluid, refrigerant, coolant, oil.</summary>
    public ValueList<Hazard> Drains { get; init; } = [];

    public string? Kit { get; init; }
}
