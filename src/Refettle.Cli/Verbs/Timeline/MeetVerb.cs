using System.CommandLine;
using NodaTime;
using Refettle.Logbook;

namespace Refettle.Cli.Verbs.Timeline;

internal static class MeetVerb
{
    private static Fault Past =>
        new("day", "it has passed already", "Nothing can be in time for it. Another day: refettle meet DAY; none: refettle meet none.")
        { Severity = Severity.Note };

    public static Command Make(Desk desk)
    {
        var day = new Argument<string>("day") { Description = "The date to meet: 2027-04-10, +6w, sat+6w; none to have no date any more." };
        var at = new Option<string?>("--at") { Description = "By when on that day: 9:00 where nothing was ever said.", HelpName = "time" };
        var what = new Option<string?>("--what")
        { Description = "What happens then: hand-over where nothing was ever said.", HelpName = "text" };
        return new Command("meet",
            "The date that the car has to be ready for; of a date that is moved time and words stay unless you say others.") { day, at,
                what }
            .Answers(desk, parsed => desk.WithCar(parsed, open =>
            {
                if (parsed.GetRequiredValue(day) == "none")
                    return desk.Record(open, [new HandoverSet(null)], now => SpellVerb.Said(now, "No date to meet any more."));
                var was = open.Car.Calendar.Handover ?? new(new(1, 1, 1, 9, 0), "hand-over");
                var by = parsed.GetValue(at) is { } typed ? Days.Time("--at", typed) : Result<LocalTime>.Good(was.By.TimeOfDay);
                var days = new Days(desk.Around, open.Car);
                return Reply.To(days.Day("day", parsed.GetRequiredValue(day)), date => Reply.To(by, time =>
                {
                    var meets = new Handover(date + time, parsed.GetValue(what) ?? was.What);
                    return desk.Record(open, [new HandoverSet(meets)],
                        now => SpellVerb.Said(now, $"To meet: {DayWords.Moment(meets.By)}, {meets.What}."))
                        .With(meets.By < days.NowHere ? [Past] : []);
                }));
            }));
    }
}
