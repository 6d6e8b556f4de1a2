namespace Refettle.Logbook;

/// <summary>What an entry about coating tells, in a line.</summary>
public static class CoatingWords
{
    /// <param name="happening">The happening.</param>
    /// <param name="name">The name of <c>part x</c>.</param>
    /// <returns>Null when it is about something else.</returns>
    public static string? Of(Happening happening, Func<string, string> name) => happening switch
    {
        ProductDescribed { Product: var product } =>
            $"Coating product {product.Name}: {Counted(product.Figures.Count + product.Recoat.Count, "figure")}{(product.Sheet is { } sheet ? $", {sheet}" : ", no data sheet")}",
        CoatingSystemDescribed { System: var system } => $"Coating system {system.Name}: {Of(system)}",
        CoatingChosen { System: { } system } chosen => $"Coating {system} for {Parts(chosen.Parts.Select(one => one.Part), name)}",
        CoatingChosen chosen => $"No coating for {Parts(chosen.Parts.Select(one => one.Part), name)}",
        CoatApplied { Coat: var coat } => Of(coat, name),
        KeptBare { Spot: var spot } => $"Kept bare on {name($"part {spot.Part}")}: {spot.Spot}{(spot.Why is { } why ? $" ({why})" : "")}",
        _ => null,
    };

    /// <summary>The stages of a system in a row: <c>epoxy, then 2 × grey-top</c>.</summary>
    public static string Of(CoatingSystem system) =>
        string.Join(", then ", system.Stages.Select(stage => stage.Coats > 1 ? $"{stage.Coats} × {stage.Product}" : stage.Product));

    /// <summary>When coats were put on what, and in which air.</summary>
    public static string Of(AppliedCoat coat, Func<string, string> name)
    {
        string?[] read =
        [
            coat.Celsius is { } air ? $"air {air:0.#} °C" : null,
            coat.HumidityPercent is { } humidity ? $"{humidity:0.#} % humidity" : null,
            coat.SurfaceCelsius is { } surface ? $"surface {surface:0.#} °C" : null,
            coat.FilmMicrometres.Count > 0 ? $"film {string.Join(", ", coat.FilmMicrometres.Select(film => $"{film:0.#}"))} µm" : null,
        ];
        return $"Coated with {coat.Product}{(coat.Coats > 1 ? $", {coat.Coats} coats" : "")}, {DayWords.Moment(coat.At)}: {Parts(coat.Parts, name)}"
            + string.Concat(read.OfType<string>().Select(one => $"; {one}"));
    }

    private static string Parts(IEnumerable<string> parts, Func<string, string> name) =>
        string.Join(", ", parts.Select(part => name($"part {part}")));

    private static string Counted(int count, string what) => count == 1 ? $"1 {what}" : $"{count} {what}s";
}
