using System.CommandLine;
using NodaTime;
using Refettle.Bench;
using Refettle.Cli.Verbs.Timeline;
using Refettle.Cli.Views;
using Refettle.Coating;
using Refettle.Logbook;

namespace Refettle.Cli.Verbs.Coating;

internal static class CoatVerb
{
    public static Command Make(Desk desk)
    {
        var product = new Argument<string>("product") { Description = "What was put on." };
        var parts = new Argument<string[]>("part") { Description = "On which parts.", Arity = ArgumentArity.OneOrMore };
        var on = Days.Option("--on", "The day; by default today.");
        var at = new Option<string?>("--at")
        { Description = "When the last coat was on: 18:30; by default now, or noon of another day.", HelpName = "time" };
        var coats = new Option<int>("--coats") { Description = "How many, wet on wet.", DefaultValueFactory = _ => 1 };
        var air = new Option<string?>("--air") { Description = "Air as read: 16C.", HelpName = "value" };
        var humidity = new Option<string?>("--humidity") { Description = "Humidity as read: 60%.", HelpName = "value" };
        var surface = new Option<string?>("--surface") { Description = "Surface as read: 15C.", HelpName = "value" };
        var film = new Option<string[]>("--film")
        { Description = "Dry film of all coats, as read: 62um.", HelpName = "value", AllowMultipleArgumentsPerToken = true };
        return new Command("coat", "Records coats that were put on; then says what is due.") { product, parts, on, at, coats, air, humidity,
            surface, film }
            .Answers(desk, parsed => desk.WithCar(parsed, open =>
            {
                var (celsius, humid) =
                    (Read("--air", parsed.GetValue(air), Units.Celsius), Read("--humidity", parsed.GetValue(humidity), Units.Percent));
                var (warm, films) = (Read("--surface", parsed.GetValue(surface), Units.Celsius),
                    (parsed.GetValue(film) ?? []).Select(text => Read("--film", text, Units.Micrometre)).ToList());
                var moment = Moment(new(desk.Around, open.Car), parsed.GetValue(on), parsed.GetValue(at));
                var faults = new[] { celsius, humid, warm }.Concat(films).SelectMany(one => one.Faults).Concat(moment.Faults).ToList();
                return faults.Count > 0 ? Reply.Bad(faults) : Record(desk, open, new(
                    parsed.GetRequiredValue(product), (parsed.GetValue(parts) ?? []).Distinct().ToValueList(), moment.Value,
                    parsed.GetValue(coats),
                    celsius.Value.Figure, humid.Value.Figure, warm.Value.Figure,
                    films.Select(one => one.Value.Figure!.Value).ToValueList()));
            }));
    }

    private static Reply Record(Desk desk, OpenCar open, AppliedCoat coat) => desk.Record(open, [new CoatApplied(coat)], now =>
    {
        var time = new Days(desk.Around, now.Car).NowHere;
        var due = DueCoats.Of(now.Car, time).Where(one => coat.Parts.Contains(one.Part)).ToValueList();
        return new Reply(CoatingView.OfDue(due), new { car = now.Car.Id, coat, due })
            .With([.. CoatAir.Doubts(now.Car.Coating, coat), .. CoatTimes.Doubts(now.Car.Coating, time)]);
    });

    private static Result<LocalDateTime> Moment(Days days, string? on, string? at)
    {
        var day = days.Day("--on", on ?? "today");
        var time = at is null
            ? Result<LocalTime>.Good(day.IsGood && day.Value == days.NowHere.Date ? days.NowHere.TimeOfDay : LocalTime.Noon)
            : Days.Time("--at", at);
        return day.IsGood && time.IsGood
            ? Result<LocalDateTime>.Good(day.Value + new LocalTime(time.Value.Hour, time.Value.Minute))
            : Result<LocalDateTime>.Bad([.. day.Faults, .. time.Faults]);
    }

    private static Result<Reading> Read(string place, string? text, Unit unit)
    {
        if (text is null)
            return Result<Reading>.Good(new(null));
        var read = Measure.Read(place, text, unit.Dimension);
        return read.IsGood ? Result<Reading>.Good(new(Math.Round((decimal)read.Value.In(unit), 2))) : Result<Reading>.Bad(read.Faults);
    }

    /// <summary>What was read, or nothing.</summary>
    private readonly record struct Reading(decimal? Figure);
}
