using System.CommandLine;
using System.Globalization;
using Refettle.Logbook;

namespace Refettle.Cli.Verbs;

internal static class EstimateVerb
{
    private static readonly string[] Keys =
        ["work", "material", "outside", "outside-days", "price", "lead-days", "substitute", "substitute-work", "sold-with"];

    public static Command Make(Desk desk)
    {
        var part = new Argument<string>("part") { Description = "The part." };
        var values = new Argument<string[]>("key=value")
        {
            Description = $"Minutes, money or days: {string.Join(", ", Keys)}. A key without a value takes it back.",
            Arity = ArgumentArity.OneOrMore
        };
        return new Command("estimate",
            "Records what you know of a part's price, work and times; the suggested verdict counts with it.") { part, values }
            .Answers(desk, parsed => desk.WithCar(parsed, open =>
            {
                if (Unknown.Part(open.Car.Structure, parsed.GetRequiredValue(part)) is { } fault)
                    return Reply.Bad([fault]);
                var known = open.Car.Estimates.FirstOrDefault(one => one.Part == parsed.GetRequiredValue(part))
                    ?? new(parsed.GetRequiredValue(part), null, null, null, null, null, null, null, null, null);
                var faults = new List<Fault>();
                foreach (var text in parsed.GetRequiredValue(values))
                    known = With(known, text, faults);
                return faults.Count > 0
                    ? Reply.Bad(faults)
                    : desk.Record(open, [new PartEstimated(known)],
                        now => Reply.Said($"{known.Part}: {JudgingSayings.Of(known)}.", new { car = now.Car.Id, estimate = known }));
            }));
    }

    private static PartEstimate With(PartEstimate known, string text, List<Fault> faults)
    {
        var (key, word) = text.Split('=', 2) is [var before, var after] ? (before, after) : (text, "");
        if (key == "sold-with")
            return known with { SoldWith = word.Length == 0 ? null : word };
        decimal? figure = null;
        if (word.Length > 0 && !Read(word, out figure))
            faults.Add(new(text, $"\"{word}\" is not a number", "Write minutes, money or days as a plain number, such as 45 or 12.50."));
        Minutes? minutes = figure is { } one ? new Minutes(one) : null;
        Money? money = figure is { } two ? new Money(two) : null;
        switch (key)
        {
            case "work": return known with { Work = minutes };
            case "material": return known with { Material = money };
            case "outside": return known with { OutsidePrice = money };
            case "outside-days": return known with { OutsideDays = figure };
            case "price": return known with { Price = money };
            case "lead-days": return known with { LeadDays = figure };
            case "substitute": return known with { SubstitutePrice = money };
            case "substitute-work": return known with { SubstituteWork = minutes };
            default:
                faults.Add(new(text, $"there is no key \"{key}\"", NearNames.Ask(key, Keys, $"There are {string.Join(", ", Keys)}.")));
                return known;
        }
    }

    private static bool Read(string word, out decimal? figure)
    {
        var good = decimal.TryParse(word, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture,
            out var value);
        figure = value;
        return good;
    }
}
