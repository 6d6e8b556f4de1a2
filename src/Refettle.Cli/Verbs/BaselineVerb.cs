using System.CommandLine;
using Refettle.Judging;
using Refettle.Logbook;
using Spectre.Console;

namespace Refettle.Cli.Verbs;

internal static class BaselineVerb
{
    public static Command Make(Desk desk)
    {
        var item = new Argument<string?>("item")
        { Description = "One of the list; nothing to see the list.", Arity = ArgumentArity.ZeroOrOne };
        var says = new Argument<string?>("says") { Description = "What was found.", Arity = ArgumentArity.ZeroOrOne };
        var skip = new Option<string?>("--skip") { Description = "Why it is left out.", HelpName = "why" };
        return new Command("baseline", "What to know of the car before the first bolt; it cannot be found out later.") { item, says, skip }
            .Answers(desk, parsed => desk.WithCar(parsed, open => parsed.GetValue(item) is { } asked
                ? desk.Record(open, [new BaselineTold(new(asked, parsed.GetValue(says), parsed.GetValue(skip), []))], Shown)
                : Shown(open)));
    }

    private static Reply Shown(OpenCar open)
    {
        var lines = Baseline.Of(open.Car, Baseline.MeasuredCorners(open.History));
        var table = new Table { Border = TableBorder.None };
        table.AddColumns("", "Item", "What to do", "Known");
        foreach (var line in lines)
            table.AddRow(line.IsSettled ? "✓" : "·", line.Item.Id.EscapeMarkup(), line.Item.Asks.EscapeMarkup(),
                (line.Says ?? "").EscapeMarkup());
        var left = lines.Count(line => !line.IsSettled);
        return new(new Rows(table,
            new Text(left == 0 ? "All is known: the strip may begin." : $"{left} open. None can be made up for once the strip has begun.")),
            new { open = left, items = lines });
    }
}
