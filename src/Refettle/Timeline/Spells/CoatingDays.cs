using NodaTime;
using Refettle.Bench.Coating;

namespace Refettle.Timeline.Spells;

/// <summary>On which days the air lets a product dry.</summary>
public static class CoatingDays
{
    /// <summary>Why it does not on a day, in words; null when it does, or when nothing is known of the air:
    /// then nothing is promised either.</summary>
    public static string? Against(CarCalendar calendar, LocalDate day, AirNeeds needs) =>
        Air(calendar, day) is { } air ? Against(air.Celsius, air.Humidity, needs) : null;

    /// <summary>Why a product does not dry in this air, in words; null when it does.</summary>
    /// <param name="celsius">Of the air; null when not read.</param>
    /// <param name="humidityPercent">Null when not read.</param>
    /// <param name="needs">What the product asks for.</param>
    /// <param name="surfaceCelsius">Of the part; null takes it to be as warm as the air.</param>
    /// <remarks>Dew-point margin after ISO 12944-7: of the surface.</remarks>
    public static string? Against(decimal? celsius, decimal? humidityPercent, AirNeeds needs, decimal? surfaceCelsius = null)
    {
        double? margin = celsius is { } air && humidityPercent is { } humidity
            ? (double)(surfaceCelsius ?? air) - DewPoint.Celsius((double)air, (double)humidity / 100) : null;
        return celsius < needs.LeastCelsius ? $"{celsius:0.#} °C, it needs {needs.LeastCelsius:0.#} °C"
            : surfaceCelsius < needs.LeastCelsius ? $"{surfaceCelsius:0.#} °C of the surface, it needs {needs.LeastCelsius:0.#} °C"
            : celsius > needs.MostCelsius ? $"{celsius:0.#} °C, it bears {needs.MostCelsius:0.#} °C"
            : humidityPercent >= needs.MostHumidityPercent
            ? $"{humidityPercent:0.#} % humidity, it needs less than {needs.MostHumidityPercent:0.#} %"
            : margin < (double)needs.MarginKelvin ? $"{margin:0.0} K above the dew point, {needs.MarginKelvin:0.#} K are needed"
            : null;
    }

    /// <summary>The day's reading, else its month's figures; null when neither is known.</summary>
    public static (decimal Celsius, decimal Humidity)? Air(CarCalendar calendar, LocalDate day)
    {
        if (calendar.Readings.FirstOrDefault(reading => reading.Day == day) is { } read)
            return (read.Celsius, read.HumidityPercent);
        return calendar.Climate.FirstOrDefault(month => month.Month == day.Month) is { } expected
            ? (expected.Celsius, expected.HumidityPercent)
            : null;
    }

    /// <summary>The days from today to the horizon on which nothing speaks against coating, as windows.</summary>
    public static ValueList<Window> Open(CarCalendar calendar, WallClock clock, LocalDate horizon, AirNeeds needs)
    {
        var days = Enumerable.Range(0, Math.Max(0, Period.DaysBetween(clock.Today, horizon)) + 1).Select(clock.Today.PlusDays)
            .Where(day => Against(calendar, day, needs) is null);
        return Stretches.Joined(days.Select(day => new Window(clock.Minute(day.AtMidnight()), SpellWindows.End(day, clock))), 0,
            int.MaxValue);
    }
}
