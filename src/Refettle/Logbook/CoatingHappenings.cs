namespace Refettle.Logbook;

/// <summary>A coating as its data sheet describes it; one with the same identifier is replaced. <c>product-described</c></summary>
public sealed record ProductDescribed(CoatingProduct Product) : Happening;

/// <summary>Products that go on one after the other; one with the same identifier is replaced. <c>coating-system-described</c></summary>
public sealed record CoatingSystemDescribed(CoatingSystem System) : Happening;

/// <summary>Parts are to get a system; without one they are not coated. <c>coating-chosen</c></summary>
/// <param name="Parts">Each with its area in m², where known.</param>
public sealed record CoatingChosen(string? System, ValueList<PartArea> Parts) : Happening;

/// <summary>A part and the area to coat; null when not known.</summary>
public sealed record PartArea(string Part, decimal? SquareMetres);

/// <summary>Coats were put on. <c>coat-applied</c></summary>
public sealed record CoatApplied(AppliedCoat Coat) : Happening;

/// <summary>A place stays bare. <c>kept-bare</c></summary>
public sealed record KeptBare(KeptBareSpot Spot) : Happening;
