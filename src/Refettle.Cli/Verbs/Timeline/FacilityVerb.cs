using System.CommandLine;
using System.Globalization;
using Refettle.Bench;
using Refettle.Logbook;

namespace Refettle.Cli.Verbs.Timeline;

internal static class FacilityVerb
{
    private const string None = "none";

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

    public static Command Make(Desk desk) =>
        new("facility", "What work needs and is not always there: helper, lift, bench, spray corner, hired tools.")
    {
        Add(desk), Remove(desk),
    };

    private static Command Add(Desk desk)
    {
        var id = new Argument<string>("id") { Description = "Its name in one word." };
        var kind = new Option<string?>("--kind")
        { Description = $"{string.Join(", ", Kinds.Keys)}; of a new one it has to be said.", HelpName = "kind" };
        var name = new Option<string?>("--name")
        { Description = "What it is called; a tool is recognised by this in what a step needs.", HelpName = "text" };
        var count = new Option<int?>("--count") { Description = "How many there are; one where nothing is said." };
        var pieces = new Option<string?>("--pieces")
        { Description = $"How many pieces hang or lie in a spray corner at one time; {None} for any number.", HelpName = "count" };
        var area = new Option<string?>("--area")
        { Description = $"How much area fits into a spray corner at one time: 4m2; {None} for any.", HelpName = "value" };
        var (first, last) = (Days.Option("--first", $"The first day it is there; {None} for always."),
            Days.Option("--last", $"The last day it is there; {None} for always."));
        return new Command("add",
            "Adds one, or changes one of that name: what is not said stays. Times of day: refettle spell add … --whose ID.") { id, kind,
                name, count, pieces, area, first, last }
            .Answers(desk, parsed => desk.WithCar(parsed, open =>
            {
                var (asked, days) = (parsed.GetRequiredValue(id), new Days(desk.Around, open.Car));
                return Reply.To(Begun(open.Car.Calendar, asked, parsed.GetValue(kind)), was =>
                    Reply.To(Unless(parsed.GetValue(first), was.From, text => days.Day("--first", text)),
                        from => Reply.To(Unless(parsed.GetValue(last), was.Until, text => days.Day("--last", text)), until =>
                        Reply.To(Unless(parsed.GetValue(pieces), was.MostPieces, Pieces),
                            most => Reply.To(Unless(parsed.GetValue(area), was.MostSquareMetres, Area), fits =>
                        {
                            var facility = was with
                            {
                                Name = parsed.GetValue(name) ?? was.Name,
                                Count = parsed.GetValue(count) ?? was.Count,
                                MostPieces = most,
                                MostSquareMetres = fits,
                                From = from,
                                Until = until
                            };
                            return desk.Record(open, [new FacilityAdded(facility)],
                                now => SpellVerb.Said(now, $"There is {CalendarWords.Of(facility)}."));
                        })))));
            }));
    }

    private static Command Remove(Desk desk)
    {
        var id = new Argument<string>("id") { Description = "Its name." };
        return new Command("remove", "It is there no more, nor are its spells.") { id }
            .Answers(desk, parsed => desk.WithCar(parsed, open =>
                desk.Record(open, [new FacilityRemoved(parsed.GetRequiredValue(id))],
                    now => SpellVerb.Said(now, $"{parsed.GetValue(id)} is there no more."))));
    }

    /// <summary>The one of that name, or a new one.</summary>
    private static Result<Facility> Begun(CarCalendar calendar, string id, string? kind)
    {
        var known = calendar.Facilities.FirstOrDefault(one => one.Id == id);
        if (kind is null)
            return known is not null
                ? Result<Facility>.Good(known)
                : Result<Facility>.Bad(
                    new Fault("--kind", $"nothing is known of {id} yet", $"Say what it is: {string.Join(", ", Kinds.Keys)}."));
        return Kinds.TryGetValue(kind, out var said) ? Result<Facility>.Good((known ?? new() { Id = id, Name = id }) with { Kind = said })
            : Result<Facility>.Bad(
                new Fault("--kind", $"\"{kind}\" is not one", NearNames.Ask(kind, Kinds.Keys, $"Write {string.Join(", ", Kinds.Keys)}.")));
    }

    /// <summary>What was said; what it was where nothing is; null where it is taken off.</summary>
    private static Result<T?> Unless<T>(string? text, T? was, Func<string, Result<T>> read)
        where T : struct
    {
        if (text is null or None)
            return Result<T?>.Good(text is null ? was : null);
        var said = read(text);
        return said.IsGood ? Result<T?>.Good(said.Value) : Result<T?>.Bad(said.Faults);
    }

    private static Result<int> Pieces(string text) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var count) ? Result<int>.Good(count)
        : Result<int>.Bad(new Fault("--pieces", $"\"{text}\" is not a number of pieces", $"Write a whole number, or {None}."));

    private static Result<decimal> Area(string text)
    {
        var read = Measure.Read("--area", text, Dimension.Area);
        return read.IsGood
            ? Result<decimal>.Good(Math.Round((decimal)read.Value.In(Units.SquareMetre), 4))
            : Result<decimal>.Bad(read.Faults);
    }
}
