using Refettle.Coating.Sessions;

namespace Refettle.Coating;

/// <summary>What fits into the spray corner at one time, and what a part takes of it.</summary>
internal static class SprayRoom
{
    /// <summary>All corners together; without a figure for one of them any number.</summary>
    public static SessionRoom Of(CarCalendar calendar)
    {
        var corners = Corners(calendar);
        return corners.Count == 0 ? SessionRoom.Endless : new(
            corners.Any(corner => corner.MostPieces is null) ? null : corners.Sum(corner => corner.Count * corner.MostPieces),
            corners.Any(corner => corner.MostSquareMetres is null) ? null : corners.Sum(corner => corner.Count * corner.MostSquareMetres));
    }

    /// <summary>Its pieces, and the area of all of them; an area that is not entered takes none.</summary>
    public static SessionLoad Load(Car car, string part) =>
        new(car.Structure.Parts.FirstOrDefault(one => one.Id == part)?.Count ?? 1, car.Coating.Parts.FirstOrDefault(one => one.Part == part)?.SquareMetres ?? 0);

    /// <summary>Room in words: <c>3 pieces and 4 m²</c>.</summary>
    public static string Words(SessionRoom room) => Facility.Fitting(room.Pieces, room.SquareMetres);

    /// <summary>What is taken to fit in, and who says so.</summary>
    /// <param name="parts">Those with coats to come.</param>
    public static IEnumerable<Fault> Notes(Car car, IReadOnlyList<PartProgress> parts)
    {
        var room = Of(car.Calendar);
        if (parts.Count > 1 && room.IsEndless)
            yield return new("spray corner", "how much fits in at one time is not entered: a session takes any number of parts", "Say it: refettle facility add corner --kind spray-corner --pieces 6 --area 4m2.");
        if (parts.Count > 0 && !room.IsEndless)
            yield return new("spray corner", $"{Words(room)} fit in at one time, by your word for {string.Join(", ", Corners(car.Calendar).Select(corner => corner.Name))}; each coat is counted until its session is over, not until it is dry", "Leave days between sessions where parts dry in the corner, or enter less room.");
        if (room.SquareMetres is not null && parts.Where(part => Load(car, part.Part).SquareMetres == 0).Select(part => part.Part).ToList() is { Count: > 0 } without)
            yield return new("spray corner", $"{string.Join(", ", without)}: area not entered, counted as none", "Enter it: refettle coating for SYSTEM PART=AREA.");
    }

    private static List<Facility> Corners(CarCalendar calendar) => [.. calendar.Facilities.Where(one => one.Kind == FacilityKind.SprayCorner)];
}
