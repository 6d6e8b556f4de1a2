using System.CommandLine;
using Refettle.Logbook;

namespace Refettle.Cli.Verbs.Timeline;

internal static class MeetVerb
{
    public static Command Make(Desk desk)
    {
        var day = new Argument<string>("day") { Description = "The date to meet: 2027-04-10, +6w, sat+6w; none to have no date any more." };
        var at = new Option<string>("--at") { Description = "By when on that day.", DefaultValueFactory = _ => "9:00" };
        var what = new Option<string>("--what") { Description = "What happens then.", DefaultValueFactory = _ => "hand-over" };
        return new Command("meet", "The date that the car has to be ready for.") { day, at, what }
            .Answers(desk, parsed => desk.WithCar(parsed, open =>
            {
                if (parsed.GetRequiredValue(day) == "none")
                    return desk.Record(open, [new HandoverSet(null)], now => SpellVerb.Said(now, "No date to meet any more."));
                return Reply.To(new Days(desk.Around, open.Car).Day("day", parsed.GetRequiredValue(day)), date => Reply.To(Days.Time("--at", parsed.GetRequiredValue(at)), time =>
                    desk.Record(open, [new HandoverSet(new(date + time, parsed.GetRequiredValue(what)))], now =>
                        SpellVerb.Said(now, $"To meet: {DayWords.Moment(date + time)}, {parsed.GetValue(what)}."))));
            }));
    }
}
