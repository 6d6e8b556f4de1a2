using System.CommandLine;
using Refettle.Logbook;
using Refettle.Stuck;
using Refettle.Timeline;
using Spectre.Console;

namespace Refettle.Cli.Verbs;

internal static class SoakVerb
{
    public static Command Make(Desk desk)
    {
        var joints = new Argument<string[]>("joint")
        { Description = "The joints that are wetted now; nothing to see the clocks.", Arity = ArgumentArity.ZeroOrMore };
        return new Command("soak",
            "Starts the clock of a soak, or shows all that run. They run beside each other and beside other work.") { joints }
            .Answers(desk, parsed => desk.WithCar(parsed, open => Reply.To(desk.Ladders(), ladders =>
            {
                var asked = (parsed.GetValue(joints) ?? []).Distinct().ToList();
                if (asked.Select(joint => Unknown.Joint(open.Car.Structure, joint)).OfType<Fault>().ToList() is { Count: > 0 } faults)
                    return Reply.Bad(faults);
                return asked.Count == 0 ? Shown(desk, open.Car, ladders) : Begin(desk, open, asked, ladders);
            })));
    }

    private static Reply Begin(Desk desk, OpenCar open, List<string> joints, LadderSet ladders)
    {
        var begun = new List<Happening>();
        foreach (var joint in joints)
        {
            var subject = open.Car.Structure.Joints.First(one => one.Id == joint);
            if (SoakClock.RungFor(open.Car, subject, ladders) is not { } soak)
                return Reply.Bad(
                    [new($"joint {joint}", "its ladder has no soak as it is now", "See refettle stuck for what can be tried.")]);
            begun.Add(new SoakBegun(joint, soak.Id, desk.Around.Clock.GetUtcNow()));
        }

        return desk.Record(open, begun, now => Shown(desk, now.Car, ladders));
    }

    private static Reply Shown(Desk desk, Car car, LadderSet ladders)
    {
        var now = desk.Around.Clock.GetUtcNow();
        var clocks = SoakClock.All(car, ladders);
        var table = new Table { Border = TableBorder.None };
        var wall = desk.WallOf(car);
        table.AddColumns("Joint", $"Since ({wall.Zone.Id})", $"Ready ({wall.Zone.Id})", "");
        foreach (var clock in clocks)
            table.AddRow(clock.Joint.EscapeMarkup(), DayWords.Moment(wall.At(clock.Since)), DayWords.Moment(wall.At(clock.Ready)),
                clock.IsReady(now) ? "ready: try it" : clock.Doubt(now) ?? $"{clock.Left(now).TotalHours:0.0} h left");
        return new(clocks.Count == 0 ? new Text("No joint soaks.") : table, new { now, clocks });
    }
}
