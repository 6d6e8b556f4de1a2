using System.CommandLine;
using Refettle.Cli.Views;
using Refettle.Logbook;
using Refettle.Sheets.Edits;

namespace Refettle.Cli.Verbs;

internal static class MeansVerb
{
    public static Command Make(Desk desk)
    {
        var values = new Argument<string[]>("key=value")
        {
            Description = "budget, hours, by, per-point; an empty value lifts a limit; nothing to see them.",
            Arity = ArgumentArity.ZeroOrMore
        };
        return new Command("means", "What you have to spend on the car: money, hours, days.") { values }
            .Answers(desk, parsed => desk.WithCar(parsed, open => Reply.To(KeyValue.Read(parsed.GetValue(values) ?? []), keys =>
                keys.Count == 0 ? Shown(open.Car) : Reply.To(JobEdit.Of(open.Car.Means, keys), means =>
                    desk.Record(open, [new MeansSet(means)], now => Shown(now.Car))))));
    }

    private static Reply Shown(Car car) =>
        Reply.Said($"To spend: {JobView.Of(car.Means, car.Currency)}.", new { car = car.Id, means = car.Means });
}
