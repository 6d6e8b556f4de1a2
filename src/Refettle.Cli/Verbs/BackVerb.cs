using System.CommandLine;
using Refettle.Logbook;

namespace Refettle.Cli.Verbs;

internal static class BackVerb
{
    public static Command Make(Desk desk)
    {
        var step = new Argument<string>("fact")
        { Description = "What is back: 'off(part)' is fitted, 'open(joint)' closed, 'state(state)' ended." };
        var minutes = new Option<decimal?>("--minutes") { Description = "How long it took." };
        return new Command("back", "Records that a step was taken back: fitted, closed, refilled.") { step, minutes }
            .Answers(desk, parsed => desk.WithCar(parsed, open => Reply.To(Goals.Read([parsed.GetRequiredValue(step)]), facts =>
            {
                var took = parsed.GetValue(minutes) is { } value ? new Minutes(value) : (Minutes?)null;
                return desk.Record(open, [new StepReversed(facts[0], took)], now => Stands.After(now, $"{facts[0]} is taken back."));
            })));
    }
}
