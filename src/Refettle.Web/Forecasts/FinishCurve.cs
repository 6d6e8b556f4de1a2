using System.Globalization;
using NodaTime;
using Refettle.Forecast.OfCar;

namespace Refettle.Web.Forecasts;

/// <summary>The chance to be finished over time, as a drawing of 320 by 180.</summary>
/// <param name="Line">Points of the line, as SVG wants them.</param>
/// <param name="Ticks">Days along the bottom, with where they stand.</param>
/// <param name="Date">Where the date stands; null when it has none or lies outside.</param>
public sealed record FinishCurve(string Line, ValueList<(double X, string Says)> Ticks, double? Date)
{
    public const double Left = 40;
    public const double Right = 310;
    public const double Top = 10;
    public const double Bottom = 150;

    private const int MostTicks = 4;

    /// <returns>Null when there is nothing to draw.</returns>
    public static FinishCurve? Of(ShownForecast forecast)
    {
        if (forecast.Curve.Count < 2)
            return null;
        var (first, last) = (forecast.Curve[0].At, forecast.Curve[forecast.Curve.Count - 1].At);
        double X(LocalDateTime at) => Left + (Right - Left) * Minutes(first, at) / Minutes(first, last);
        var line = string.Join(' ', forecast.Curve.Select(point => Point(X(point.At), Y(point.Chance))));
        var ticks = Enumerable.Range(0, MostTicks)
            .Select(i => first + Period.FromMinutes((long)(Minutes(first, last) * i / (MostTicks - 1))))
            .Select(at => (X(at), $"{at.Day} {CultureInfo.InvariantCulture.DateTimeFormat.AbbreviatedMonthNames[at.Month - 1]}"))
            .ToValueList();
        return new(line, ticks, forecast.Date is { } date && date >= first && date <= last ? X(date) : null);
    }

    /// <summary>The height of a chance.</summary>
    public static double Y(double chance) => Bottom - (Bottom - Top) * chance;

    /// <summary>A number as SVG wants it.</summary>
    public static string Number(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);

    private static string Point(double x, double y) => $"{Number(x)},{Number(y)}";

    private static double Minutes(LocalDateTime from, LocalDateTime to) => Period.Between(from, to, PeriodUnits.Minutes).Minutes;
}
