using Refettle.Forecast.OfCar;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Refettle.Cli.Views;

/// <summary>How sure the finish is.</summary>
internal static class ForecastView
{
    private const int Most = 8;
    private const int WidestBar = 40;
    private const int Bars = 12;

    public static IRenderable Of(CarForecast forecast) => new Rows(
    [
        new Markup($"[bold]{ForecastWords.Sentence(forecast).Safe()}[/]"),
        Text.Empty,
        Curve(forecast),
        .. Section("What never gets done", forecast.Answer.Stranded.Take(3).Select(one => ForecastWords.Stranded(forecast, one))),
        .. Section("What decides it (share of futures in which it held up the finish)",
            ForecastWords.Decide(forecast, 6, 4).Select(one => $"{one.Share.Value,5:0%}  {forecast.Task(one.Place).Says}")),
        .. Section("What would help most, one thing at a time",
            forecast.Answer.Helps.Take(Most).Select(help => $"{ForecastWords.Of(forecast, help)}: {ForecastWords.Gain(help)}")),
        .. Section($"Order or send out, to be {forecast.Confidence:0%} sure that it holds nothing up",
            forecast.Answer.OrderBy.Take(Most).Select(one => $"{ForecastWords.Of(forecast, one)}: {forecast.Task(one.Place).Says}")),
        .. Section("Windows that closed too soon",
            forecast.Answer.TooLate.Take(Most)
                .Select(one => $"{ForecastWords.Percent(one.Chance)}: {forecast.Says(one.Before)} → {forecast.Says(one.After)}")),
        .. Section("What this stands on", forecast.Assumed),
    ]);

    private static Table Curve(CarForecast forecast)
    {
        var table = new Table { Border = TableBorder.None };
        table.AddColumn("Finished by");
        table.AddColumn("Chance");
        var points = forecast.Answer.Curve;
        for (var i = 0; i < Math.Min(Bars, points.Count); i++)
        {
            var point = points[points.Count <= Bars ? i : i * (points.Count - 1) / (Bars - 1)];
            table.AddRow(new Text(DayWords.Day(forecast.At(point.Time).Date)),
                new Text($"{new string('█', (int)Math.Round(point.Chance * WidestBar)),-WidestBar} {point.Chance,4:0%}"));
        }

        return table;
    }

    private static IEnumerable<IRenderable> Section(string head, IEnumerable<string> lines)
    {
        var all = lines.ToList();
        return all.Count == 0
            ? []
            : [Text.Empty, new Markup($"[bold]{head.Safe()}[/]"),
                .. all.Select(line => new Padder(new Text(line), new Padding(2, 0, 0, 0)))];
    }
}
