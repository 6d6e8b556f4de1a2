namespace Refettle.Bench.Coating;

/// <summary>Where water falls out of the air, by the Magnus formula over water.</summary>
/// <remarks>Over water at any temperature: below 0 °C frost forms a little earlier.</remarks>
public static class DewPoint
{
    public const string Source =
        "Magnus formula, Sonntag's coefficients 17.62 and 243.12 °C (WMO guide); within 0.04 K of PsychroLib from 0 to 40 °C";

    private const double B = 17.62;
    private const double C = 243.12;

    public static Input<double> Air { get; } = Inputs.Quantity("air", "air temperature", Units.Celsius, -20, 50);

    public static Input<double> Humidity { get; } = Inputs.Quantity("humidity", "relative humidity", Units.Percent, 1, 100);

    private static readonly Input<double> Wet = Inputs.Quantity("wet", "wet-bulb temperature, ventilated", Units.Celsius, 0, 50);

    public static BenchNumber Number { get; } = new()
    {
        Name = "dew-point",
        Says = "Dew point from air temperature and humidity",
        Room = "Coating",
        Formula = "g = ln(RH) + b T/(c + T); Td = c g / (b − g)",
        Source = Source,
        Uncertainty = "The range is ±3 % of relative humidity on a cheap meter (assumed); the formula adds 0.04 K.",
        Inputs = [Air, Humidity],
        Example = "air=20C humidity=60%",
        Work = Work,
    };

    public static BenchNumber FromWetBulb { get; } = new()
    {
        Name = "dew-point-wet-bulb",
        Says = "Dew point and humidity from dry and wet bulb",
        Room = "Coating",
        Formula = "e = es(Tw) − 0.00066 (1 + 0.00115 Tw) · 1013.25 hPa · (T − Tw); RH = e / es(T)",
        Source = "Psychrometer formula of the WMO guide, from memory; " + Source,
        Uncertainty = "About 0.3 K for readings to half a degree, at sea level, with the bulb swung or ventilated.",
        Inputs = [Air, Wet],
        Example = "air=21C wet=17C",
        Work = WorkWetBulb,
    };

    /// <summary>Dew point in °C. Humidity more than 0, up to 1.</summary>
    public static double Celsius(double airCelsius, double humidityShare)
    {
        var g = Math.Log(humidityShare) + B * airCelsius / (C + airCelsius);
        return C * g / (B - g);
    }

    /// <summary>Relative humidity, as a share of 1, of air with this dew point at a surface: above 1 it is wet.</summary>
    public static double HumidityShareAt(double surfaceCelsius, double dewPointCelsius) =>
        SaturationHectopascals(dewPointCelsius) / SaturationHectopascals(surfaceCelsius);

    /// <summary>Saturation pressure of water vapour over water, in hPa.</summary>
    public static double SaturationHectopascals(double celsius) => 6.112 * Math.Exp(B * celsius / (C + celsius));

    /// <summary>Relative humidity, as a share of 1, from a ventilated psychrometer at sea level.</summary>
    public static double HumidityShare(double airCelsius, double wetBulbCelsius) =>
        (SaturationHectopascals(wetBulbCelsius) - 0.00066 * (1 + 0.00115 * wetBulbCelsius) * 1013.25 * (airCelsius - wetBulbCelsius))
        / SaturationHectopascals(airCelsius);

    private static Result<Outcome> Work(Given given)
    {
        var (air, humidity) = (given.Of(Air), given.Of(Humidity) / 100);
        var dew = Celsius(air, humidity);
        return Outcome.Judged(
            [new("dew point", dew, Units.Celsius, Celsius(air, Math.Max(0.005, humidity - 0.03)),
                Celsius(air, Math.Min(1, humidity + 0.03)))],
            verdict: null,
            dew < 0 ? "Below 0 °C frost forms a little above this dew point over water." : null);
    }

    private static Result<Outcome> WorkWetBulb(Given given)
    {
        var (air, wet) = (given.Of(Air), given.Of(Wet));
        if (wet > air)
            return Outcome.Refuse("wet", "the wet bulb is warmer than the air", "Read both again, or exchange them");
        var share = HumidityShare(air, wet);
        return share > 0.01
            ? Outcome.Of(new("dew point", Celsius(air, share), Units.Celsius), new("relative humidity", share * 100, Units.Percent))
            : Outcome.Refuse("wet", "no air is that dry", "Wet the sock and ventilate the bulb, then read again");
    }
}
