namespace Refettle.Bench.Coating;

/// <summary>Whether a surface may be coated in this air.</summary>
public static class SurfaceMargin
{
    /// <summary>The surface is at least so much warmer than the dew point.</summary>
    public const double LeastMarginKelvin = 3;

    /// <summary>Relative humidity stays below this.</summary>
    public const double HumidityLimitPercent = 85;

    private static readonly Input<double> Surface =
        Inputs.Quantity("surface", "temperature of the surface, measured on it", Units.Celsius, -20, 80);
    private static readonly Input<double> Limit = Inputs.Quantity("humidity-limit", "most humidity by the product's data sheet",
        Units.Percent, 20, 95).Or("85 %", "ISO 12944-7 where the data sheet says nothing");

    public static BenchNumber Number { get; } = new()
    {
        Name = "surface-margin",
        Says = "Whether a surface is far enough above the dew point to coat",
        Room = "Coating",
        Formula = "surface − dew point ≥ 3 K and RH < limit",
        Source = "ISO 12944-7 with ISO 8502-4 (four readings: air, humidity, dew point, surface); " + DewPoint.Source,
        Uncertainty = "Thermometers differ by 1 K, humidity meters by 3 % (assumed): a margin within 1 K of the limit is undecided. A blasted surface keeps bright only below 40 to 55 % humidity at the surface (SSPC-TR 3).",
        Inputs = [DewPoint.Air, DewPoint.Humidity, Surface, Limit],
        Example = "air=16C humidity=71% surface=13C",
        Work = Work,
    };

    private static Result<Outcome> Work(Given given)
    {
        var dew = DewPoint.Celsius(given.Of(DewPoint.Air), given.Of(DewPoint.Humidity) / 100);
        var margin = given.Of(Surface) - dew;
        var (isWarm, isDry) = (margin >= LeastMarginKelvin, given.Of(DewPoint.Humidity) < given.Of(Limit));
        return Outcome.Judged(
            [
                new("dew point", dew, Units.Celsius),
                new("surface above dew point", margin, Units.KelvinStep),
                new("humidity at the surface", 100 * DewPoint.HumidityShareAt(given.Of(Surface), dew), Units.Percent),
            ],
            isWarm && isDry ? "coat" : "do not coat",
            isWarm ? null : "Warm the part, or dry the air: water may stand on it unseen.",
            isDry ? null : $"Humidity is at or above {Measure.Figure(given.Of(Limit))} %.",
            isWarm && margin < LeastMarginKelvin + 1 ? "Within 1 K of the limit: the meters may decide it either way." : null);
    }
}
