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

    private static readonly Option<double> Confidence = new("--confidence") { Description = "How sure order-by and send-out days are to be, in percent.", DefaultValueFactory = _ => 80 };
    private static readonly Option<int> Futures = new("--futures") { Description = "How many futures are sampled.", DefaultValueFactory = _ => ForecastQuestion.DefaultFutures };
    private static readonly Option<ulong> Seed = new("--seed") { Description = "Another seed, other futures; the same seed, the same answer.", DefaultValueFactory = _ => 1 };
    private static readonly Option<double?> Missed = new("--missed") { Description = "How many of your spells come to nothing, in percent; by default 10." };
    private static readonly Option<double> Seconds = new("--seconds") { Description = "How long to look for a better order first.", DefaultValueFactory = _ => 0 };

    public static Command Make(Desk desk) => new Command("forecast", "How sure the finish is, what decides it, what would help, what to order by when.")
    {
        TimelineGoals.Named, Confidence, Futures, Seed, Missed, Seconds,
    }.Answers(desk, parsed => Faults(parsed) is { Count: > 0 } faults ? Reply.Bad(faults) : TimelineGoals.With(desk, parsed, (_, supplied) => Answer(desk, parsed, supplied)));

    private static List<Fault> Faults(ParseResult parsed)
    {
        var faults = new List<Fault>();
        if (parsed.GetValue(Confidence) is not (> 0 and < 100))
            faults.Add(new("--confidence", $"{parsed.GetValue(Confidence)} percent", "Give more than 0 and less than 100, such as 80."));
        if (parsed.GetValue(Missed) is < 0 or > 100)
            faults.Add(new("--missed", $"{parsed.GetValue(Missed)} percent", "Give 0 to 100."));
        if (parsed.GetValue(Seconds) is not (>= 0 and <= MostSeconds))
            faults.Add(new("--seconds", $"{parsed.GetValue(Seconds)} seconds", $"Give 0 to {MostSeconds}."));
        return faults;
    }

    private static Reply Answer(Desk desk, ParseResult parsed, SuppliedWork supplied)
    {
        var seconds = parsed.GetValue(Seconds);
        var question = supplied.Forecast(seconds > 0 ? desk.Around.Scheduler() : new FirstScheduler(), TimeSpan.FromSeconds(seconds), desk.Around.Interrupt);
        return Reply.To(question, asked => Reply.To(
            CarForecast.Of(asked with
            {
                Missed = parsed.GetValue(Missed) / 100,
                Confidence = parsed.GetValue(Confidence) / 100,
                Futures = parsed.GetValue(Futures),
                Seed = parsed.GetValue(Seed),
            }, desk.Around.Interrupt),
            forecast => new Reply(ForecastView.Of(forecast), ShownForecast.Of(forecast)) { Faults = forecast.Notes }));
    }
}
