using NodaTime;

namespace Refettle;

/// <summary>What a facility is good for.</summary>
public enum FacilityKind
{
    /// <summary>A second pair of hands.</summary>
    Helper,

    /// <summary>A lift, or the stands that the car is worked on.</summary>
    Lift,
    Bench,
    SprayCorner,

    /// <summary>A tool that is hired or borrowed, or there is only one of.</summary>
    Tool,

    /// <summary>A place where the car can stand: the yard, a bay with a lift, a spray corner it fits into. Work
    /// that uses it has the car there.</summary>
    Place,

    /// <summary>Car dollies, skates or the like: what carries a car that does not roll.</summary>
    Dollies,
}

/// <summary>Something that work needs and that is not always there: a helper, a lift, a bench, a spray corner, a hired tool.</summary>
public sealed record Facility
{
    public required string Id { get; init; }

    /// <summary>A tool is recognised by this name in what a step needs.</summary>
    public required string Name { get; init; }

    public FacilityKind Kind { get; init; }

    /// <summary>How many there are, 1 or more.</summary>
    public int Count { get; init; } = 1;

    /// <summary>How many pieces can hang or lie in each of a spray corner at one time, as its owner says; null when not said.</summary>
    public int? MostPieces { get; init; }

    /// <summary>How much area fits into each of a spray corner at one time, as its owner says; null when not said.</summary>
    public decimal? MostSquareMetres { get; init; }

    /// <summary>The first day it is there; null for always.</summary>
    public LocalDate? From { get; init; }

    /// <summary>The last day it is there; null for always. Spells that are its own narrow this further.</summary>
    public LocalDate? Until { get; init; }

    /// <summary>What fits in, in words: <c>3 pieces and 4 m²</c>; empty where neither is said.</summary>
    public static string Fitting(int? pieces, decimal? squareMetres) => string.Join(" and ", new[]
    {
        pieces is { } count ? count == 1 ? "1 piece" : $"{count} pieces" : null,
        squareMetres is { } area ? $"{area:0.##} m²" : null,
    }.OfType<string>());
}
