using System.CommandLine;
using Refettle.Logbook;

namespace Refettle.Cli.Verbs;

internal static class NewVerb
{
    public static Command Make(Desk desk)
    {
        var name = new Argument<string>("name") { Description = "What you call the car." };
        var id = new Option<string>("--id") { Description = "Its identifier; by default made from the name." };
        var year = new Option<int?>("--year") { Description = "Model year." };
        var currency = new Option<string>("--currency")
        { Description = "ISO 4217 code of the money you count in.", DefaultValueFactory = _ => "EUR" };
        return new Command("new", "Begins a car: a body shell with the usual zones, states and stances.") { name, id, year, currency }
            .Answers(desk, parsed => desk.WithLogbook(parsed, logbook => Reply.To(desk.SoundKits(), shelf =>
            {
                var car = parsed.GetValue(id) ?? Identifier.From(parsed.GetRequiredValue(name));
                if (Refused(logbook, car) is { } fault)
                    return Reply.Bad([fault]);
                Happening[] first =
                [
                    new CarOpened(parsed.GetRequiredValue(name), parsed.GetValue(year), parsed.GetValue(currency)!),
                    new StructureAdded("kit start", shelf.Start, []),
                ];
                return desk.Record(desk.Begin(logbook, car), first,
                    now => Stands.After(now, $"{now.Car.Name} begins as {car}. Next: refettle kits, then refettle add KIT."));
            })));
    }

    private static Fault? Refused(ILogbook logbook, string car)
    {
        if (!Identifier.IsValid(car))
            return new($"car {car}", "this cannot be an identifier",
                "Give --id with small letters, digits, - and _, beginning with a letter or digit.");
        return logbook.Cars().Any(known => known.Id == car) ? new Fault($"car {car}", "there is one already", "Give another --id.") : null;
    }
}
