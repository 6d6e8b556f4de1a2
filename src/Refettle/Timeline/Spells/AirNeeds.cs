using Refettle.Bench.Coating;

namespace Refettle.Timeline.Spells;

/// <summary>What a coat asks of the air while it is put on and dries.</summary>
/// <param name="LeastCelsius">Null when nobody has said.</param>
/// <param name="MostHumidityPercent">It stays below this.</param>
/// <param name="MostCelsius">Null when nobody has said.</param>
/// <param name="MarginKelvin">The surface is at least so much warmer than the dew point.</param>
public sealed record AirNeeds(
    decimal? LeastCelsius, decimal MostHumidityPercent, decimal? MostCelsius = null,
    decimal MarginKelvin = (decimal)SurfaceMargin.LeastMarginKelvin)
{
    /// <summary><c>15 °C or more, below 70 % humidity, 3 K above the dew point</c>; what nobody has said is left out.</summary>
    public string Says => string.Join(", ", new[]
    {
        LeastCelsius is { } least ? $"{least:0.#} °C or more" : null, MostCelsius is { } most ? $"{most:0.#} °C at most" : null,
        $"below {MostHumidityPercent:0.#} % humidity", $"{MarginKelvin:0.#} K above the dew point",
    }.OfType<string>());

    /// <summary>By the product's data sheet; where it is not entered, the margin and humidity of ISO
    /// 12944-7 and no limit of temperature.</summary>
    public static AirNeeds Of(CoatingProduct product) => new(
        product.Figure(FigureKind.LeastAir),
        product.Figure(FigureKind.MostHumidity) ?? (decimal)SurfaceMargin.HumidityLimitPercent,
        product.Figure(FigureKind.MostAir),
        product.Figure(FigureKind.DewMargin) ?? (decimal)SurfaceMargin.LeastMarginKelvin);
}
