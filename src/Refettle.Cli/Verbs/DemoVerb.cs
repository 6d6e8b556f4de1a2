using System.CommandLine;
using Refettle.Access;
using Refettle.Cli.Commands;
using Refettle.Cli.Forms;
using Refettle.Cli.Views;
using Refettle.Logbook;
using Spectre.Console;

namespace Refettle.Cli.Verbs;

internal static class DemoVerb
{
    private static readonly Fact _goal = Fact.Free("rear-axle");

    public static Command Make(Desk desk)
    {
        var serve = new Option<bool>("--serve") { Description = "Then serve the pages." };
        var port = ServeVerb.Port();
        var command = new Command("demo", "Makes the demo cars where there is no car yet, and shows a plan for one.") { serve, port }
            .Answers(desk, parsed => desk.WithLogbook(parsed, logbook => Answer(desk, parsed, logbook)));
        return command.Then(desk, parsed => parsed.GetValue(serve) ? desk.WithLogbook(parsed, logbook =>
            Serving.Run(desk, logbook, parsed.GetValue(port), Reach.ThisMachine, address => ServeVerb.Tell(desk, parsed, address))) : null);
    }

    private static Reply Answer(Desk desk, ParseResult parsed, ILogbook logbook)
    {
        var made = logbook.Cars().Count > 0 ? Reply.Said("", new { }) : Build(desk, parsed);
        return made.Code == ExitCode.Good ? desk.WithCar(parsed, open => Shown(desk, open)) : made;
    }

    /// <summary>Runs the samples; the first in the order of names comes last: what both cars share after
    /// both, and it speaks of the estate.</summary>
    private static Reply Build(Desk desk, ParseResult parsed)
    {
        var files = Directory.EnumerateFiles(Path.Combine(desk.Around.Content, "samples"), "*.commands")
            .OrderDescending(StringComparer.Ordinal).ToList();
        if (files.Count == 0)
            return Reply.Bad([new("demo", $"there is no sample in {desk.Around.Content}", "Run it from a whole checkout.")]);
        desk.IsQuiet = true;
        var reply = files.Select(file => CommandFile.Run(desk, file, ScriptVerb.Passed(parsed)))
            .FirstOrDefault(reply => reply.Code != ExitCode.Good);
        desk.IsQuiet = false;
        return reply ?? Reply.Said("", new { });
    }

    private static Reply Shown(Desk desk, OpenCar open)
    {
        var question = Question.For(_goal);
        if (QuestionCheck.Of(open.Car, question).Count > 0)
            return new(CarView.Of(open.Car), new { car = open.Car.Id });
        var plan = desk.Planner.Reach(open.Car, question, desk.Around.Interrupt);
        return new(new Rows(Head(open.History, open.Car), Text.Empty, PlanView.Of(plan)),
            new { car = open.Car.Id, plan = PlanForm.Of(plan) })
        { Code = desk.CodeOf(plan) };
    }

    private static Markup Head(CarHistory history, Car car) =>
        new($"[bold]{car.Name.Safe()}[/] ({car.Id.Safe()}): {car.Structure.Parts.Count} parts, {car.Structure.Joints.Count} joints, {Wording.Count(history.Lines.Count, "entry", "entries")} in its log");
}
