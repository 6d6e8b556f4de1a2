using Refettle.Bench.Coating;

namespace Refettle.Timeline.Spells;

/// <summary>When the next coat may go on, in hours after one, at the temperatures in between.</summary>
/// <param name="Closes">Null when there is no end, or none is entered.</param>
public sealed record RecoatHours(double Opens, double? Closes)
{
    /// <summary>From the sheet's rows, to the safe side: it opens as on the coldest day, and closes as on
    /// the warmest. Between two rows the slower opening and the quicker closing of both count; beyond them the nearest is scaled as the
    /// bench number does (<see cref="RecoatWindow"/>).</summary>
    /// <returns>Null when the sheet's rows are not entered.</returns>
    public static RecoatHours? Of(CoatingProduct product, double coldestCelsius, double warmestCelsius)
    {
        if (product.Recoat.Count == 0)
            return null;
        var ends = Near(product.Recoat, warmestCelsius).Where(row => row.ClosesHours is not null)
            .Select(row => At(row, warmestCelsius, Bracketed(product.Recoat, warmestCelsius)).Closes).ToList();
        return new(
            Near(product.Recoat, coldestCelsius).Max(row => At(row, coldestCelsius, Bracketed(product.Recoat, coldestCelsius)).Opens),
            ends.Count == 0 ? null : ends.Min());
    }

    /// <summary>The temperature of the sheet's row that is nearest to 20 °C: it stands where nothing is known of the
    /// air. Null when no row is entered.</summary>
    public static double? StatedCelsius(CoatingProduct product) =>
        (double?)product.Recoat.MinBy(row => Math.Abs(row.Celsius - 20))?.Celsius;

    /// <summary>At that temperature.</summary>
    public static RecoatHours? AsStated(CoatingProduct product) =>
        StatedCelsius(product) is { } celsius ? Of(product, celsius, celsius) : null;

    private static bool Bracketed(ValueList<RecoatRow> rows, double celsius) =>
        rows.Any(row => (double)row.Celsius <= celsius) && rows.Any(row => (double)row.Celsius >= celsius);

    /// <summary>The row for the temperature, else those on both sides of it, else the nearest.</summary>
    private static IEnumerable<RecoatRow> Near(ValueList<RecoatRow> rows, double celsius)
    {
        RecoatRow?[] near = [rows.Where(row => (double)row.Celsius <= celsius).MaxBy(row => row.Celsius),
            rows.Where(row => (double)row.Celsius >= celsius).MinBy(row => row.Celsius)];
        return near.OfType<RecoatRow>().Distinct();
    }

    private static (double Opens, double Closes) At(RecoatRow row, double celsius, bool isBracketed)
    {
        var (opens, closes) = ((double)row.OpensHours, (double?)row.ClosesHours ?? double.PositiveInfinity);
        return isBracketed ? (opens, closes) : RecoatWindow.Hours(opens, closes, (double)row.Celsius, celsius);
    }
}
