using System.CommandLine;
using System.Globalization;
using Refettle.Logbook;

namespace Refettle.Cli.Verbs.Timeline;

internal static class ClimateVerb
{
    private static readonly string[] Months = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];

    public static Command Make(Desk desk)
    {
        var values = new Argument<string[]>("when=air")
        {
            Description = "Months as you expect them, jan=12C/70%, or a reading of a day, today=14C/62%.",
            Arity = ArgumentArity.OneOrMore
        };
        var measured = new Option<bool>("--measured") { Description = "The months' figures are measured, not guessed." };
        return new Command("climate", "The air where paint dries: coats are planned for days that let them.") { values, measured }
            .Answers(desk, parsed => desk.WithCar(parsed, open =>
            {
                var read = (parsed.GetValue(values) ?? [])
                    .Select(text => Read(new(desk.Around, open.Car), text, parsed.GetValue(measured) ? Origin.Measured : Origin.User))
                    .ToList();
                var faults = read.SelectMany(one => one.Faults).ToList();
                return faults.Count > 0 ? Reply.Bad(faults)
                    : desk.Record(open, [.. read.Select(one => one.Value)],
                        now => SpellVerb.Said(now,
                            $"Air noted for {string.Join(", ", (parsed.GetValue(values) ?? []).Select(text => text.Split('=')[0]))}."));
            }));
    }

    private static Result<Happening> Read(Days days, string text, Origin origin)
    {
        var sides = text.Split('=');
        if (sides.Length != 2 || Air(sides[1]) is not { } air)
            return Result<Happening>.Bad(new Fault("climate", $"\"{text}\" cannot be read", "Write jan=12C/70% or today=14C/62%."));
        if (Array.IndexOf(Months, sides[0].ToLowerInvariant()) is >= 0 and var month)
            return Result<Happening>.Good(new ClimateExpected([new(month + 1, air.Celsius, air.Humidity, origin)]));
        var day = days.Day("climate", sides[0]);
        return day.IsGood
            ? Result<Happening>.Good(new ClimateRead(new(day.Value, air.Celsius, air.Humidity)))
            : Result<Happening>.Bad(day.Faults);
    }

    private static (decimal Celsius, decimal Humidity)? Air(string text)
    {
        var parts = text.Split('/');
        return parts.Length == 2 && Number(parts[0], "C") is { } celsius && Number(parts[1], "%") is { } humidity
            ? (celsius, humidity)
            : null;
    }

    private static decimal? Number(string text, string unit) =>
        text.EndsWith(unit, StringComparison.OrdinalIgnoreCase)
            && decimal.TryParse(text[..^1], NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture,
                out var number) ? number : null;
}
