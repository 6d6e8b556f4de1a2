using System.CommandLine;
using Refettle.CloseUp;
using Refettle.Logbook;

namespace Refettle.Cli.Verbs;

internal static class DoneVerb
{
    public static Command Make(Desk desk)
    {
        var step = new Argument<string>("fact") { Description = "What is done: 'off(part)', 'open(joint)', 'state(state)'." };
        var way = new Option<string>("--way") { Description = "The way it was done." };
        var minutes = new Option<decimal?>("--minutes") { Description = "How long it took." };
        return new Command("done", "Records that a step was done.") { step, way, minutes }
            .Answers(desk, parsed => desk.WithCar(parsed, open => Reply.To(Goals.Read([parsed.GetRequiredValue(step)]), facts =>
            {
                var took = parsed.GetValue(minutes) is { } value ? new Minutes(value) : (Minutes?)null;
                var asks = BeforeTheStrip.Asks(open.History, facts[0]);
                return desk.Record(open, [Told(open.Car, facts[0], parsed.GetValue(way), took)],
                    now => Stands.After(now, $"{facts[0]} is done.")).With(asks);
            })));
    }

    /// <summary>A stance that is reached is a stance taken.</summary>
    private static Happening Told(Car car, Fact fact, string? way, Minutes? took) =>
        fact.Kind == FactKind.State && way is null && took is null
            && car.Structure.States.Any(state => state.Id == fact.Subject && state.IsStance)
            ? new StanceTaken(fact.Subject)
            : new StepDone(fact, way, took);
}
