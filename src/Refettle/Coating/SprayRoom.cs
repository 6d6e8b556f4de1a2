using Refettle.Coating.Sessions;

namespace Refettle.Coating;

/// <summary>What a part takes of the spray corner, and what is said of its room.</summary>
internal static class SprayRoom
{
    /// <summary>Its pieces, and the area of all of them; an area that is not entered takes none.</summary>
    public static SessionLoad Load(Car car, string part) =>
        new(car.Structure.Parts.FirstOrDefault(one => one.Id == part)?.Count ?? 1,
            car.Coating.Parts.FirstOrDefault(one => one.Part == part)?.SquareMetres ?? 0);

    /// <summary>Room in words: <c>3 pieces and 4 m²</c>.</summary>
    public static string Words(SessionRoom room) => Facility.Fitting(room.Pieces, room.SquareMetres);

    /// <summary>What is taken to fit in, and who says so.</summary>
    /// <param name="parts">Those with coats to come.</param>
    public static IEnumerable<Fault> Notes(Car car, IReadOnlyList<PartProgress> parts)
    {
        var (corner, used) = (new SprayCorner(car.Calendar),
            parts.SelectMany(part => part.ToCome).Select(coat => car.Coating.Product(coat.Product)!).Distinct().ToList());
        var (room, unsaid) = (corner.RoomOfAll, used.Where(product => corner.DryAt(product, new(2027, 1, 1, 0, 0), null) is null).ToList());
        if (parts.Count > 1 && room.IsEndless)
            yield return new("spray corner", "how much fits in at one time is not entered: a session takes any number of parts",
                "Say it: refettle facility add corner --kind spray-corner --pieces 6 --area 4m2.");
        if (parts.Count > 0 && !room.IsEndless)
            yield return new("spray corner",
                $"{Words(room)} fit in at one time, by your word for {corner.Names}; a part takes room until it can be handled by its sheet, else until the next coat may go on", "Take it out later where it is not dry then: your finger nail counts, not the plan.");
        if ((!room.IsEndless || corner.ComesAndGoes) && unsaid.Count > 0)
            yield return new("spray corner",
                $"{string.Join(", ", unsaid.Select(product => product.Id))}: when it is dry is not entered, and it takes room only until its session is over", $"Look it up: refettle product set {unsaid[0].Id} handle=… at=….");
        if (room.SquareMetres is not null
            && parts.Where(part => Load(car, part.Part).SquareMetres == 0).Select(part => part.Part).ToList() is { Count: > 0 } without)
            yield return new("spray corner", $"{string.Join(", ", without)}: area not entered, counted as none",
                "Enter it: refettle coating for SYSTEM PART=AREA.");
    }
}
