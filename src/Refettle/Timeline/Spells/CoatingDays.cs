using NodaTime;
using Refettle.Bench.Coating;

namespace Refettle.Timeline.Spells;

/// <summary>On which days the air lets a product dry.</summary>
public static class CoatingDays
{
    /// <summary>Why it does not on a day, in words; null when it does, or when nothing is known of the air: then nothing is promised either.</summary>
    /// <param name="leastCelsius">By the product's data sheet.</param>
    /// <param name="mostHumidityPercent">By the product's data sheet.</param>
    /// <remarks>The part is taken to be as warm as the air. Dew-point margin after ISO 12944-7.</remarks>
    public static string? Against(CarCalendar calendar, LocalDate day, decimal leastCelsius, decimal mostHumidityPercent)
    {
        if (Air(calendar, day) is not { } air)
            return null;
        var margin = (double)air.Celsius - DewPoint.Celsius((double)air.Celsius, (double)air.Humidity / 100);
        return air.Celsius < leastCelsius ? $"{air.Celsius:0.#} °C, it needs {leastCelsius:0.#} °C"
            : air.Humidity >= mostHumidityPercent ? $"{air.Humidity:0.#} % humidity, it needs less than {mostHumidityPercent:0.#} %"
            : margin < SurfaceMargin.LeastMarginKelvin ? $"{margin:0.0} K above the dew point, {SurfaceMargin.LeastMarginKelvin} K are needed"
            : null;
    }

    /// <summary>The day's reading, else its month's figures; null when neither is known.</summary>
    public static (decimal Celsius, decimal Humidity)? Air(CarCalendar calendar, LocalDate day)
    {
        if (calendar.Readings.FirstOrDefault(reading => reading.Day == day) is { } read)
            return (read.Celsius, read.HumidityPercent);
        return calendar.Climate.FirstOrDefault(month => month.Month == day.Month) is { } expected ? (expected.Celsius, expected.HumidityPercent) : null;
    }

    /// <summary>The days from today to the horizon on which nothing speaks against coating, as windows.</summary>
    public static ValueList<Window> Open(CarCalendar calendar, WallClock clock, LocalDate horizon, decimal leastCelsius, decimal mostHumidityPercent)
    {
        var days = Enumerable.Range(0, Math.Max(0, Period.DaysBetween(clock.Today, horizon)) + 1).Select(clock.Today.PlusDays)
            .Where(day => Against(calendar, day, leastCelsius, mostHumidityPercent) is null);
        return SpellWindows.Joined(days.Select(day => new Window(clock.Minute(day.AtMidnight()), SpellWindows.End(day, clock))), 0, int.MaxValue);
    }
}
