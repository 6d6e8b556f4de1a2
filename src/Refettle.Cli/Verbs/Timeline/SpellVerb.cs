using System.CommandLine;
using NodaTime;
using Refettle.Cli.Views;
using Refettle.Logbook;
using Refettle.Timeline.Spells;

namespace Refettle.Cli.Verbs.Timeline;

internal static class SpellVerb
{
    private const string Me = "me";

    public static Command Make(Desk desk) => new("spell", "When you expect to be in the garage.")
    {
        List(desk), Add(desk), Remove(desk), Miss(desk), Zone(desk), SpellFiles.Import(desk), SpellFiles.Export(desk),
    };

    private static Command List(Desk desk) =>
        new Command("list", "All spells, the date to meet, what is there when, tasks of yours and what you set for others.")
        .Answers(desk, parsed => desk.WithCar(parsed, open => Shown(open.Car)));

    private static Command Add(Desk desk)
    {
        var id = Id();
        var from = new Option<string?>("--from") { Description = "When it begins: 18:30.", HelpName = "time" };
        var until = new Option<string?>("--until")
        { Description = "When it ends: 21:30; at or before the begin it ends on the next day.", HelpName = "time" };
        var on = new Option<string[]>("--on")
        {
            Description = "Days of the week, tue,thu, or daily; once for a single day, as when a new one says nothing.",
            AllowMultipleArgumentsPerToken = true
        };
        var first = Days.Option("--first", "The first day, or the only one; by default today.");
        var last = Days.Option("--last", "The last day that may have one; none for no end.");
        var times = new Option<int?>("--times") { Description = "So many in all." };
        var every = new Option<int?>("--every") { Description = "Every so many weeks or days." };
        var whose = new Option<string?>("--whose")
        {
            Description = "Of a helper, lift or tool (refettle facility); me for your own time, as when a new one says nothing.",
            HelpName = "id"
        };
        return new Command("add", "Adds a spell, once or again and again, or changes one of that name: what is not said stays.") { id, from,
            until, on, first, last, times, every, whose }
            .Answers(desk, parsed => desk.WithCar(parsed, open =>
            {
                var (days, was) =
                    (new Days(desk.Around, open.Car), open.Car.Calendar.Spells.FirstOrDefault(spell => spell.Id == parsed.GetValue(id)));
                return Reply.To(TimeOf("--from", parsed.GetValue(from), was?.From),
                    begin => Reply.To(TimeOf("--until", parsed.GetValue(until), was?.Until), end =>
                    Reply.To(parsed.GetValue(first) is null && was is not null
                        ? Result<LocalDate>.Good(was.First)
                        : days.Day("--first", parsed.GetValue(first) ?? "today"), day =>
                        Reply.To(Last(days, parsed.GetValue(last), was?.Repeats?.Until),
                            last => Reply.To(SpellRepeats.Of(was?.Repeats, parsed.GetValue(on) ?? [], parsed.GetValue(every), last,
                                parsed.GetValue(times)), again =>
                        {
                            var theirs = parsed.GetValue(whose) is { } said ? said == Me ? null : said : was?.Whose;
                            var spell = (was ?? new() { Id = parsed.GetRequiredValue(id), First = day, From = begin, Until = end }) with
                            { Whose = theirs, First = day, From = begin, Until = end, Repeats = again };
                            return desk.Record(open, [new SpellAdded(spell)],
                                now => Said(now, $"Spell {spell.Id}: {CalendarWords.Of(spell)}."));
                        })))));
            }));
    }

    private static Command Remove(Desk desk)
    {
        var id = Id();
        return new Command("remove", "Takes a spell out altogether.") { id }
            .Answers(desk, parsed => desk.WithCar(parsed, open =>
                desk.Record(open, [new SpellRemoved(parsed.GetRequiredValue(id))],
                    now => Said(now, $"Spell {parsed.GetValue(id)} is gone."))));
    }

    private static Command Miss(Desk desk)
    {
        var id = Id();
        var day = new Argument<string>("day") { Description = "The day on which it does not take place: 2027-01-12, today, thu." };
        return new Command("miss", "A spell does not take place on one day.") { id, day }
            .Answers(desk,
                parsed => desk.WithCar(parsed,
                    open => Reply.To(new Days(desk.Around, open.Car).Day("day", parsed.GetRequiredValue(day)), missed =>
                desk.Record(open, [new SpellMissed(parsed.GetRequiredValue(id), missed)],
                    now => Said(now, $"Spell {parsed.GetValue(id)} not on {DayWords.Day(missed)}."))
                    .With(IsOn(open.Car, parsed.GetRequiredValue(id), missed) ? [] : [NotThen(missed)]))));
    }

    private static bool IsOn(Car car, string id, LocalDate day) =>
        car.Calendar.Spells.FirstOrDefault(spell => spell.Id == id) is not { } spell || SpellDays.Of(spell, day).Contains(day);

    private static Fault NotThen(LocalDate day) =>
        new("day", $"it would not take place on {DayWords.Day(day)} in any case",
            "Nothing changes. Look at its days: refettle spell list.")
        { Severity = Severity.Note };

    private static Command Zone(Desk desk)
    {
        var name = new Argument<string>("name") { Description = "A name of the time-zone database: Europe/Berlin." };
        return new Command("zone", "Where the clock on the wall hangs.") { name }
            .Answers(desk, parsed => desk.WithCar(parsed, open =>
                desk.Record(open, [new TimeZoneChosen(parsed.GetRequiredValue(name))],
                    now => Said(now, $"The clock on the wall: {parsed.GetValue(name)}."))));
    }

    public static Reply Said(OpenCar now, string sentence) =>
        Reply.Said(sentence, new { car = now.Car.Id, says = sentence, calendar = now.Car.Calendar });

    public static Reply Shown(Car car) => new(CalendarView.Of(car), new { car = car.Id, calendar = car.Calendar });

    private static Result<LocalTime> TimeOf(string place, string? text, LocalTime? was) => text is not null ? Days.Time(place, text)
        : was is { } time ? Result<LocalTime>.Good(time)
        : Result<LocalTime>.Bad(new Fault(place, "there is no spell of that name yet, and this is not said", "Write it as 18:30."));

    private static Result<LocalDate?> Last(Days days, string? text, LocalDate? was)
    {
        if (text is null or "none")
            return Result<LocalDate?>.Good(text is null ? was : null);
        var day = days.Day("--last", text);
        return day.IsGood ? Result<LocalDate?>.Good(day.Value) : Result<LocalDate?>.Bad(day.Faults);
    }

    private static Argument<string> Id() => new("id") { Description = "Its name in one word: evenings." };
}
