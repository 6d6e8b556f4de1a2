using System.CommandLine;
using Refettle.Bench;
using Refettle.Cli.Verbs.Timeline;
using Refettle.Cli.Views;
using Refettle.Coating;
using Refettle.Logbook;

namespace Refettle.Cli.Verbs.Coating;

internal static class CoatingVerb
{
    public static Command Make(Desk desk) => new("coating", "What is coated with what, when, together with what, and what stays bare.")
    {
        Plan(desk), Due(desk), System(desk), For(desk), Bare(desk), Buy(desk),
    };

    private static Command Plan(Desk desk)
    {
        var from = Days.Option("--from", "The first day; by default now.");
        var days = new Option<int>("--days") { Description = "How far to look ahead.", DefaultValueFactory = _ => 60 };
        return new Command("plan", "Sessions: as few as windows and weather allow, each with steps, cautions and what to mask.") { from,
            days }
            .Answers(desk, parsed => desk.WithCar(parsed, open =>
            {
                var calendar = new Days(desk.Around, open.Car);
                var first = parsed.GetValue(from) is { } text
                    ? calendar.Day("--from", text)
                    : Result<NodaTime.LocalDate>.Good(calendar.NowHere.Date);
                return Reply.To(first, day => Reply.To(
                    CoatingPlanner.Plan(
                        new(open.Car, day == calendar.NowHere.Date ? calendar.NowHere : day.AtMidnight(), parsed.GetValue(days))),
                    plan => new Reply(CoatingView.Of(open.Car, plan),
                        new { car = open.Car.Id, plan.IsProven, plan.AtLeast, plan.Sessions, plan.Unplanned, plan.Notes })
                        .With([.. CoatTimes.Doubts(open.Car.Coating, calendar.NowHere), .. plan.Notes])));
            }));
    }

    private static Command Due(Desk desk) =>
        new Command("due", "What may be coated from when until when, what is late.").Answers(desk, parsed => desk.WithCar(parsed, open =>
    {
        var now = new Days(desk.Around, open.Car).NowHere;
        var due = DueCoats.Of(open.Car, now);
        return new Reply(CoatingView.OfDue(due), new { car = open.Car.Id, due }).With(CoatTimes.Doubts(open.Car.Coating, now));
    }));

    private static Command System(Desk desk)
    {
        var id = new Argument<string>("id") { Description = "Its name in one word." };
        var stages = new Argument<string[]>("product[*coats]")
        { Description = "Products in their order; top*2 is two coats in one session.", Arity = ArgumentArity.OneOrMore };
        var name = new Option<string?>("--name") { Description = "What you would call it; a name it has stays.", HelpName = "text" };
        return new Command("system", "Products that go on one after the other.") { id, stages, name }
            .Answers(desk, parsed => desk.WithCar(parsed, open =>
        {
            return Reply.To(StageWords.Read(parsed.GetValue(stages) ?? []), read =>
            {
                var system = new CoatingSystem(parsed.GetRequiredValue(id),
                    parsed.GetValue(name) ?? open.Car.Coating.Systems.FirstOrDefault(one => one.Id == parsed.GetValue(id))?.Name
                        ?? parsed.GetRequiredValue(id), read);
                return desk.Record(open, [new CoatingSystemDescribed(system)],
                    now => Reply.Said($"{system.Name}: {CoatingWords.Of(system)}.", new { car = now.Car.Id, system }));
            });
        }));
    }

    private static Command For(Desk desk)
    {
        var system = new Argument<string>("system") { Description = "The system; none to coat them with nothing." };
        var parts = new Argument<string[]>("part[=area]")
        { Description = "Parts, each with its area where known: rear-axle=1.2m2.", Arity = ArgumentArity.OneOrMore };
        return new Command("for", "Chooses a system for parts.") { system, parts }.Answers(desk, parsed => desk.WithCar(parsed, open =>
        {
            var read = (parsed.GetValue(parts) ?? []).Select(Area).ToList();
            var faults = read.SelectMany(one => one.Faults).ToList();
            var chosen = parsed.GetRequiredValue(system) is var word && word == "none" ? null : word;
            return faults.Count > 0
                ? Reply.Bad(faults)
                : desk.Record(open, [new CoatingChosen(chosen, read.Select(one => one.Value).ToValueList())],
                now => new(CoatingView.OfDue(DueCoats.Of(now.Car, new Days(desk.Around, now.Car).NowHere)),
                    new { car = now.Car.Id, parts = now.Car.Coating.Parts }));
        }));
    }

    private static Command Bare(Desk desk)
    {
        var part = new Argument<string>("part") { Description = "The part." };
        var spot = new Argument<string?>("spot")
        { Description = "What stays bare beside what is listed; nothing to see the list.", Arity = ArgumentArity.ZeroOrOne };
        var why = new Option<string?>("--why") { Description = "Why.", HelpName = "text" };
        return new Command("bare", "What of a part is masked.") { part, spot, why }.Answers(desk, parsed => desk.WithCar(parsed, open =>
        {
            var asked = parsed.GetRequiredValue(part);
            if (Unknown.Part(open.Car.Structure, asked) is { } fault)
                return Reply.Bad([fault]);
            Reply Shown(Car car) =>
                new(CoatingView.OfMasks(car, KeepBare.Of(car, asked)), new { car = car.Id, part = asked, bare = KeepBare.Of(car, asked) });
            return parsed.GetValue(spot) is { } said
                ? desk.Record(open, [new KeptBare(new(asked, said, parsed.GetValue(why)))], now => Shown(now.Car))
                : Shown(open.Car);
        }));
    }

    private static Command Buy(Desk desk) =>
        new Command("buy", "How much of each product the coats to come take, with loss.")
            .Answers(desk, parsed => desk.WithCar(parsed, open =>
    {
        var needs = PaintNeeds.Of(open.Car.Coating);
        return new(CoatingView.OfNeeds(open.Car, needs), new { car = open.Car.Id, needs });
    }));

    private static Result<PartArea> Area(string text)
    {
        if (text.Split('=', 2) is not [var part, var area])
            return Result<PartArea>.Good(new(text, null));
        var read = Measure.Read(part, area, Dimension.Area);
        return read.IsGood
            ? Result<PartArea>.Good(new(part, Math.Round((decimal)read.Value.In(Units.SquareMetre), 4)))
            : Result<PartArea>.Bad(read.Faults);
    }
}
