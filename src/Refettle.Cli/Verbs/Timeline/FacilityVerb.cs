using System.CommandLine;
using NodaTime;
using Refettle.Bench;
using Refettle.Logbook;

namespace Refettle.Cli.Verbs.Timeline;

internal static class FacilityVerb
{
    private static readonly Dictionary<string, FacilityKind> Kinds = new()
    {
        ["helper"] = FacilityKind.Helper,
        ["lift"] = FacilityKind.Lift,
        ["bench"] = FacilityKind.Bench,
        ["spray-corner"] = FacilityKind.SprayCorner,
        ["tool"] = FacilityKind.Tool,
        ["place"] = FacilityKind.Place,
        ["dollies"] = FacilityKind.Dollies,
    };

    public static Command Make(Desk desk) => new("facility", "What work needs and is not always there: helper, lift, bench, spray corner, hired tools.")
    {
        Add(desk), Remove(desk),
    };

    private static Command Add(Desk desk)
    {
        var id = new Argument<string>("id") { Description = "Its name in one word." };
        var kind = new Option<string>("--kind") { Description = $"{string.Join(", ", Kinds.Keys)}.", Required = true };
        var name = new Option<string>("--name") { Description = "What it is called; a tool is recognised by this in what a step needs." };
        var count = new Option<int>("--count") { Description = "How many there are.", DefaultValueFactory = _ => 1 };
        var pieces = new Option<int?>("--pieces") { Description = "How many pieces hang or lie in a spray corner at one time." };
        var area = new Option<string?>("--area") { Description = "How much area fits into a spray corner at one time: 4m2.", HelpName = "value" };
        var (first, last) = (Days.Option("--first", "The first day it is there; by default always."), Days.Option("--last", "The last day it is there; by default always."));
        return new Command("add", "Adds one; one of the same name is replaced. Times of day: refettle spell add … --whose ID.") { id, kind, name, count, pieces, area, first, last }
            .Answers(desk, parsed => desk.WithCar(parsed, open =>
            {
                if (!Kinds.TryGetValue(parsed.GetRequiredValue(kind), out var known))
                    return Reply.Bad([new("--kind", $"\"{parsed.GetValue(kind)}\" is not one", NearNames.Ask(parsed.GetRequiredValue(kind), Kinds.Keys, $"Write {string.Join(", ", Kinds.Keys)}."))]);
                var days = new Days(desk.Around, open.Car);
                return Reply.To(Maybe(days, "--first", parsed.GetValue(first)), from => Reply.To(Maybe(days, "--last", parsed.GetValue(last)), until => Reply.To(Area(parsed.GetValue(area)), fits =>
                {
                    var facility = new Facility
                    {
                        Id = parsed.GetRequiredValue(id),
                        Name = parsed.GetValue(name) ?? parsed.GetRequiredValue(id),
                        Kind = known,
                        Count = parsed.GetValue(count),
                        MostPieces = parsed.GetValue(pieces),
                        MostSquareMetres = fits,
                        From = from,
                        Until = until,
                    };
                    return desk.Record(open, [new FacilityAdded(facility)], now => SpellVerb.Said(now, $"There is {CalendarWords.Of(facility)}."));
                })));
            }));
    }

    private static Command Remove(Desk desk)
    {
        var id = new Argument<string>("id") { Description = "Its name." };
        return new Command("remove", "It is there no more, nor are its spells.") { id }
            .Answers(desk, parsed => desk.WithCar(parsed, open =>
                desk.Record(open, [new FacilityRemoved(parsed.GetRequiredValue(id))], now => SpellVerb.Said(now, $"{parsed.GetValue(id)} is there no more."))));
    }

    private static Result<decimal?> Area(string? text)
    {
        if (text is null)
            return Result<decimal?>.Good(null);
        var read = Measure.Read("--area", text, Dimension.Area);
        return read.IsGood ? Result<decimal?>.Good(Math.Round((decimal)read.Value.In(Units.SquareMetre), 4)) : Result<decimal?>.Bad(read.Faults);
    }

    private static Result<LocalDate?> Maybe(Days days, string place, string? text)
    {
        if (text is null)
            return Result<LocalDate?>.Good(null);
        var day = days.Day(place, text);
        return day.IsGood ? Result<LocalDate?>.Good(day.Value) : Result<LocalDate?>.Bad(day.Faults);
    }
}
