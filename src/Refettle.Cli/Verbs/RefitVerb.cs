using System.CommandLine;
using Refettle.Cli.Views;
using Refettle.CloseUp.Refit;

namespace Refettle.Cli.Verbs;

internal static class RefitVerb
{
    public static Command Make(Desk desk)
    {
        var first = new Option<int>("--first") { Description = "Only so many steps.", DefaultValueFactory = _ => int.MaxValue };
        return new Command("refit", "How the car goes back together from where it stands: the order, each step with what the strip remembers, how tight, which bag.") { first }
            .Answers(desk, parsed => desk.WithCar(parsed, open =>
            {
                var sheet = RefitPlanner.Of(open.History);
                return RefitCheck.Of(open.Car, sheet) is { Count: > 0 } faults ? Reply.Bad(faults) : new(RefitView.Of(sheet, parsed.GetValue(first)), sheet);
            }));
    }
}
