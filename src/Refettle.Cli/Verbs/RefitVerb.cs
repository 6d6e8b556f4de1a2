using System.CommandLine;
using Refettle.Cli.Verbs.Stock;
using Refettle.Cli.Views;
using Refettle.CloseUp.Refit;

namespace Refettle.Cli.Verbs;

internal static class RefitVerb
{
    public static Command Make(Desk desk)
    {
        var first = new Option<int>("--first") { Description = "Only so many steps.", DefaultValueFactory = _ => int.MaxValue };
        return new Command("refit",
            "How the car goes back together from where it stands: the order, each step with what the strip remembers, how tight, which bag.") { first }
            .Answers(desk,
                parsed => parsed.GetValue(first) < 1
                    ? Reply.Bad([new("--first", $"{parsed.GetValue(first)} steps", "Give 1 or more.")])
                    : OpenShelf.With(desk, parsed, shelf =>
            {
                var (history, car) = (shelf.Open.History, shelf.Open.Car);
                var histories = shelf.Cars.Select(one => one.History).ToList();
                var parts = new AwaitedParts(car, histories, shelf.Today);
                var sheet = RefitPlanner.Of(history, parts.Absent);
                if (RefitCheck.Of(car, sheet) is { Count: > 0 } faults)
                    return Reply.Bad(faults);
                var fasteners = RefitFasteners.Of(car, sheet, histories, shelf.Today);
                var awaited = parts.Of(sheet, fasteners);
                return new(RefitView.Of(car, sheet, fasteners, awaited, parsed.GetValue(first)),
                    new { sheet.Steps, sheet.Leftover, sheet.Bleeding, sheet.Checks, fasteners, awaited });
            }));
    }
}
