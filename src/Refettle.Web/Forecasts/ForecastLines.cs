using System.Globalization;
using Refettle.Forecast;
using Refettle.Forecast.OfCar;

namespace Refettle.Web.Forecasts;

/// <summary>Lines of a forecast in words.</summary>
public static class ForecastLines
{
    public static string Share(ShownDeciding deciding) => $"held up the finish in {ForecastWords.Percent(deciding.Share)} of futures";

    public static string Gain(ShownHelp help)
    {
        var days = $"{Number(help.Days.Value)} days (± {Number(help.Days.StandardError)}) earlier on average";
        return help.Chance is { } chance
            ? $"{Number(100 * chance.Value)} points (± {Number(100 * chance.StandardError)}) for the date, {days}"
            : days;
    }

    public static string By(ShownOrder order) => order.Latest is { } latest
        ? $"by {DayWords.Moment(latest)}"
        : $"at once: even so it holds nothing up in only {ForecastWords.Percent(order.ChanceAtOnce)}";

    private static string Number(double value) => value.ToString("0.0", CultureInfo.InvariantCulture);
}
