using Refettle.Bench.Coating;

namespace Refettle.Coating;

/// <summary>What the coats still to come take of a product.</summary>
/// <param name="SquareMetreCoats">Area times coats, as far as areas are entered.</param>
/// <param name="Litres">Unthinned; null when no area is entered, or neither film and solids of the sheet nor its coverage. Without
/// an entered loss nothing is lost.</param>
/// <param name="HasLoss">The loss is entered.</param>
/// <param name="WithoutArea">Parts whose area is not entered: they are not in the sum.</param>
public sealed record PaintNeed(string Product, decimal SquareMetreCoats, double? Litres, bool HasLoss, ValueList<string> WithoutArea);

/// <summary>Quantities to buy.</summary>
public static class PaintNeeds
{
    public static ValueList<PaintNeed> Of(CarCoating coating) => PartProgress.All(coating)
        .SelectMany(part => part.ToCome
            .Select(coat => (coat.Product, part.Part, Area: coating.Parts.First(one => one.Part == part.Part).SquareMetres, coat.Coats)))
        .GroupBy(one => one.Product).OrderBy(group => group.Key, StringComparer.Ordinal)
        .Select(group => Need(coating.Product(group.Key)!, group.Sum(one => (one.Area ?? 0) * one.Coats),
            group.Where(one => one.Area is null).Select(one => one.Part).Distinct().ToValueList()))
        .ToValueList();

    /// <summary>A need in a line.</summary>
    /// <param name="car">Whose parts and products go by their names.</param>
    public static string Words(Car car, PaintNeed need)
    {
        var litres = need.Litres is { } known ? $"{known:0.00} L unthinned{(need.HasLoss ? "" : ", nothing lost: enter your loss")}"
            : need.SquareMetreCoats == 0 ? "no area is entered" : "film and solids, or coverage, are not entered";
        var without = need.WithoutArea.Count > 0
            ? $"; without {string.Join("; ", need.WithoutArea.Select(car.Structure.PartName))}: area not entered"
            : "";
        return $"{car.Coating.Product(need.Product)?.Name ?? need.Product}: {litres} for {need.SquareMetreCoats:0.##} m² of coats{without}.";
    }

    private static PaintNeed Need(CoatingProduct product, decimal area, ValueList<string> withoutArea) =>
        new(product.Id, area, area == 0 ? null : Litres(product, (double)area), product.Figure(FigureKind.Loss) is not null, withoutArea);

    private static double? Litres(CoatingProduct product, double area)
    {
        var loss = (double)(product.Figure(FigureKind.Loss) ?? 0) / 100;
        return (product.Figure(FigureKind.DryFilm), product.Figure(FigureKind.Solids), product.Figure(FigureKind.Coverage)) switch
        {
            ({ } dry, { } solids, _) => Film.Litres(area, (double)dry, (double)solids / 100, loss),
            (_, _, { } coverage) => area / (double)coverage / (1 - loss),
            _ => null,
        };
    }
}
