using System.CommandLine;
using NodaTime;
using Refettle.Cli.Views;
using Refettle.Logbook;

namespace Refettle.Cli.Verbs.Timeline;

internal static class SpellVerb
{
    public static Command Make(Desk desk) => new("spell", "When you expect to be in the garage.")
    {
        List(desk), Add(desk), Remove(desk), Miss(desk), Zone(desk), SpellFiles.Import(desk), SpellFiles.Export(desk),
    };

    private static Command List(Desk desk) => new Command("list", "All spells, the date to meet, and what is there when.")
        .Answers(desk, parsed => desk.WithCar(parsed, open => Shown(open.Car)));

    private static Command Add(Desk desk)
    {
        var id = Id();
        var from = new Option<string>("--from") { Description = "When it begins: 18:30.", Required = true };
        var until = new Option<string>("--until") { Description = "When it ends: 21:30; at or before the begin it ends on the next day.", Required = true };
        var on = new Option<string[]>("--on") { Description = "Days of the week, tue,thu, or daily; left out, it is once.", AllowMultipleArgumentsPerToken = true };
        var first = Days.Option("--first", "The first day, or the only one; by default today.");
        var last = Days.Option("--last", "The last day that may have one.");
        var times = new Option<int?>("--times") { Description = "So many in all." };
        var every = new Option<int>("--every") { Description = "Every so many weeks or days.", DefaultValueFactory = _ => 1 };
        var whose = new Option<string>("--whose") { Description = "Of a helper, lift or tool (refettle facility); by default your own time." };
        return new Command("add", "Adds a spell, once or again and again; one of the same name is replaced.") { id, from, until, on, first, last, times, every, whose }
            .Answers(desk, parsed => desk.WithCar(parsed, open =>
            {
                var days = new Days(desk.Around, open.Car);
                return Reply.To(Days.Time("--from", parsed.GetRequiredValue(from)), begin => Reply.To(Days.Time("--until", parsed.GetRequiredValue(until)), end =>
                    Reply.To(days.Day("--first", parsed.GetValue(first) ?? "today"), day => Reply.To(Last(days, parsed.GetValue(last)), end_ =>
                        Reply.To(Repeats(parsed.GetValue(on) ?? [], parsed.GetValue(every), end_, parsed.GetValue(times)), again =>
                        {
                            var spell = new Spell { Id = parsed.GetRequiredValue(id), Whose = parsed.GetValue(whose), First = day, From = begin, Until = end, Repeats = again };
                            return desk.Record(open, [new SpellAdded(spell)], now => Said(now, $"Spell {spell.Id}: {CalendarWords.Of(spell)}."));
                        })))));
            }));
    }

    private static Command Remove(Desk desk)
    {
        var id = Id();
        return new Command("remove", "Takes a spell out altogether.") { id }
            .Answers(desk, parsed => desk.WithCar(parsed, open =>
                desk.Record(open, [new SpellRemoved(parsed.GetRequiredValue(id))], now => Said(now, $"Spell {parsed.GetValue(id)} is gone."))));
    }

    private static Command Miss(Desk desk)
    {
        var id = Id();
        var day = new Argument<string>("day") { Description = "The day on which it does not take place: 2027-01-12, today, thu." };
        return new Command("miss", "A spell does not take place on one day.") { id, day }
            .Answers(desk, parsed => desk.WithCar(parsed, open => Reply.To(new Days(desk.Around, open.Car).Day("day", parsed.GetRequiredValue(day)), missed =>
                desk.Record(open, [new SpellMissed(parsed.GetRequiredValue(id), missed)], now => Said(now, $"Spell {parsed.GetValue(id)} not on {DayWords.Day(missed)}.")))));
    }

    private static Command Zone(Desk desk)
    {
        var name = new Argument<string>("name") { Description = "A name of the time-zone database: Europe/Berlin." };
        return new Command("zone", "Where the clock on the wall hangs.") { name }
            .Answers(desk, parsed => desk.WithCar(parsed, open =>
                desk.Record(open, [new TimeZoneChosen(parsed.GetRequiredValue(name))], now => Said(now, $"The clock on the wall: {parsed.GetValue(name)}."))));
    }

    public static Reply Said(OpenCar now, string sentence) => Reply.Said(sentence, new { car = now.Car.Id, says = sentence, calendar = now.Car.Calendar });

    public static Reply Shown(Car car) => new(CalendarView.Of(car), new { car = car.Id, calendar = car.Calendar });

    private static Result<LocalDate?> Last(Days days, string? text)
    {
        if (text is null)
            return Result<LocalDate?>.Good(null);
        var day = days.Day("--last", text);
        return day.IsGood ? Result<LocalDate?>.Good(day.Value) : Result<LocalDate?>.Bad(day.Faults);
    }

    private static Result<Repetition?> Repeats(string[] on, int every, LocalDate? last, int? times)
    {
        if (on.Length == 0)
            return last is null && times is null && every == 1 ? Result<Repetition?>.Good(null)
                : Result<Repetition?>.Bad(new Fault("--on", "it is to repeat, and no day is given", "Say --on tue,thu or --on daily."));
        if (on is ["daily"])
            return Result<Repetition?>.Good(new(Rhythm.Daily, every, [], last, times));
        var week = Days.Week(on);
        return week.IsGood ? Result<Repetition?>.Good(new(Rhythm.Weekly, every, week.Value, last, times)) : Result<Repetition?>.Bad(week.Faults);
    }

    private static Argument<string> Id() => new("id") { Description = "Its name in one word: evenings." };
}
