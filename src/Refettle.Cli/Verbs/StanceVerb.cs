using System.CommandLine;
using Refettle.Logbook;

namespace Refettle.Cli.Verbs;

internal static class StanceVerb
{
    public static Command Make(Desk desk)
    {
        var stance = new Argument<string>("name")
        { Description = "on-wheels, on-stands, at-ride-height, not-rolling, or one of your own." };
        return new Command("stance", "Records how the car stands now.") { stance }
            .Answers(desk, parsed => desk.WithCar(parsed, open =>
            {
                var name = parsed.GetRequiredValue(stance);
                var stances = open.Car.Structure.States.Where(state => state.IsStance).Select(state => state.Id);
                return Unknown.Of("stance", name, stances) is { } fault
                    ? Reply.Bad([fault])
                    : desk.Record(open, [new StanceTaken(name)], now => Stands.After(now, $"The car is in the stance {name}."));
            }));
    }
}
