using System.CommandLine;
using Refettle.Cli.Verbs.Timeline;
using Refettle.Cli.Views;
using Refettle.Forecast;
using Refettle.Forecast.OfCar;
using Refettle.Stock.Baskets;
using Refettle.Timeline.Scheduling;

namespace Refettle.Cli.Verbs;

internal static class ForecastVerb
{
    private const double MostSeconds = 86_400;

    private static readonly Option<double> Confidence = new("--confidence")
    {
        Description = "How sure order-by and send-out days are to be: 80 or 0.8 for four in five; 50 at the least.",
        DefaultValueFactory = _ => 80
    };
    private static readonly Option<int> Futures = new("--futures")
    { Description = "How many futures are sampled.", DefaultValueFactory = _ => ForecastQuestion.DefaultFutures };
    private static readonly Option<ulong> Seed = new("--seed")
    { Description = "Another seed, other futures; the same seed, the same answer.", DefaultValueFactory = _ => 1 };
    private static readonly Option<double?> Missed = new("--missed")
    { Description = "How many of your spells come to nothing, in percent; by default 10." };
    private static readonly Option<double> Seconds = new("--seconds")
    { Description = "How long to look for a better order first.", DefaultValueFactory = _ => 0 };

    public static Command Make(Desk desk) =>
        new Command("forecast", "How sure the finish is, what decides it, what would help, what to order by when.")
    {
        TimelineGoals.Named, Confidence, Futures, Seed, Missed, Seconds,
    }.Answers(desk,
        parsed => Faults(parsed) is { Count: > 0 } faults
            ? Reply.Bad(faults)
            : TimelineGoals.With(desk, parsed, (_, supplied) => Answer(desk, parsed, supplied)));

    private static List<Fault> Faults(ParseResult parsed)
    {
        var faults = new List<Fault>();
        if (Share(parsed.GetValue(Confidence)) is not (>= 0.5 and < 1))
            faults.Add(new("--confidence", $"{parsed.GetValue(Confidence)}: less sure than a coin, or not less than sure",
                "Give 50 to 99 percent, or 0.5 to 0.99: 80 or 0.8 for four in five."));
        if (parsed.GetValue(Missed) is < 0 or > 100)
            faults.Add(new("--missed", $"{parsed.GetValue(Missed)} percent", "Give 0 to 100."));
        if (parsed.GetValue(Seconds) is not (>= 0 and <= MostSeconds))
            faults.Add(new("--seconds", $"{parsed.GetValue(Seconds)} seconds", $"Give 0 to {MostSeconds}."));
        return faults;
    }

    /// <summary>Below 1 it is a share, from there on percent.</summary>
    private static double Share(double confidence) => confidence < 1 ? confidence : confidence / 100;

    private static Reply Answer(Desk desk, ParseResult parsed, SuppliedWork supplied)
    {
        var seconds = parsed.GetValue(Seconds);
        var question = supplied.Forecast(seconds > 0 ? desk.Around.Scheduler() : new FirstScheduler(), TimeSpan.FromSeconds(seconds),
            desk.Around.Interrupt);
        return Reply.To(question, asked => Reply.To(
            CarForecast.Of(asked with
            {
                Missed = parsed.GetValue(Missed) / 100,
                Confidence = Share(parsed.GetValue(Confidence)),
                Futures = parsed.GetValue(Futures),
                Seed = parsed.GetValue(Seed),
            }, desk.Around.Interrupt),
            forecast => new Reply(ForecastView.Of(forecast), ShownForecast.Of(forecast)) { Faults = forecast.Notes }));
    }
}
