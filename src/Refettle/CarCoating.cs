using NodaTime;

namespace Refettle;

/// <summary>What the owner coats parts with, in which order, and how far they are.</summary>
public sealed record CarCoating
{
    public static CarCoating Empty { get; } = new();

    public ValueList<CoatingProduct> Products { get; init; } = [];

    public ValueList<CoatingSystem> Systems { get; init; } = [];

    /// <summary>Parts with a system, at most one each.</summary>
    public ValueList<PartCoating> Parts { get; init; } = [];

    /// <summary>Coats that were put on, in the order of the log.</summary>
    public ValueList<AppliedCoat> Applied { get; init; } = [];

    /// <summary>What the owner keeps bare beside what follows from the joints.</summary>
    public ValueList<KeptBareSpot> Bare { get; init; } = [];

    public CoatingProduct? Product(string id) => Products.FirstOrDefault(product => product.Id == id);

    public CoatingSystem? System(string id) => Systems.FirstOrDefault(system => system.Id == id);

    /// <summary>The system that a part is to get; null when none was chosen.</summary>
    public CoatingSystem? Of(string part) => Parts.FirstOrDefault(chosen => chosen.Part == part) is { } found ? System(found.System) : null;
}

/// <summary>Products that go on one after the other.</summary>
public sealed record CoatingSystem(string Id, string Name, ValueList<CoatStage> Stages);

/// <summary>A product within a system.</summary>
/// <param name="Coats">How many coats of it, wet on wet, in one session; 1 or more.</param>
public sealed record CoatStage(string Product, int Coats = 1);

/// <summary>A part with the system it is to get.</summary>
/// <param name="SquareMetres">Area to coat, of all pieces of the part; null when not known.</param>
public sealed record PartCoating(string Part, string System, decimal? SquareMetres);

/// <summary>Coats of one product that were put on parts in one session.</summary>
/// <param name="At">When the last of them was on, by the clock on the wall.</param>
/// <param name="Coats">How many, wet on wet; 1 or more.</param>
/// <param name="Celsius">Air, as read; null when not read.</param>
/// <param name="HumidityPercent">As read; null when not read.</param>
/// <param name="SurfaceCelsius">Of the part, as read; null when not read.</param>
/// <param name="FilmMicrometres">Readings of the dry film, of all coats together.</param>
public sealed record AppliedCoat(
    string Product, ValueList<string> Parts, LocalDateTime At, int Coats, decimal? Celsius, decimal? HumidityPercent,
    decimal? SurfaceCelsius, ValueList<decimal> FilmMicrometres);

/// <summary>A place on a part that is not coated, as its owner says.</summary>
/// <param name="Spot">What stays bare.</param>
/// <param name="Why">Null when not said.</param>
public sealed record KeptBareSpot(string Part, string Spot, string? Why);
