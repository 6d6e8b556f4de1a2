namespace Refettle.Logbook;

/// <summary>Something was put into a bag; the first time, or after it was empty, this opens it. <c>bag-packed</c></summary>
/// <param name="Holds">What, in words; null when only what it belongs to is said.</param>
/// <param name="For">The things it belongs to besides those said before, each as <c>joint x</c>, <c>part x</c> …</param>
/// <param name="Place">Where it lies now; null leaves that as it was.</param>
public sealed record BagPacked(string Code, string? Holds, ValueList<string> For, string? Place) : Happening;

/// <summary>A bag lies elsewhere. <c>bag-moved</c></summary>
public sealed record BagMoved(string Code, string Place) : Happening;

/// <summary>All that was in a bag is used again. <c>bag-emptied</c></summary>
public sealed record BagEmptied(string Code) : Happening;

/// <summary>A picture was taken. The bytes arrive on their own way, before or after. <c>photo-taken</c></summary>
public sealed record PhotoTaken(Photo Photo) : Happening;
