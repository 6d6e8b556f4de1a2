using System.CommandLine;
using Refettle.Cli.Commands;
using Refettle.Cli.Views;
using Refettle.Sheets;

namespace Refettle.Cli.Verbs;

internal static class ExportVerb
{
    public static Command Make(Desk desk)
    {
        var file = new Argument<string>("file") { Description = "Where to; nothing for the terminal.", Arity = ArgumentArity.ZeroOrOne };
        return new Command("export", "Writes the car as a sheet in YAML.") { file }
            .Answers(desk, parsed => desk.WithCar(parsed, open =>
            {
                var car = open.Car;
                var yaml = SheetWriter.Write(new()
                { Name = car.Name, Year = car.Year, Currency = car.Currency, Structure = car.Structure });
                return parsed.GetValue(file) is { } path
                    ? Reply.To(TextFile.Write(desk.PathOf(path), yaml),
                        written => Reply.Said($"Written to {written}.", new { car = car.Id, file = written }))
                    : new(new Verbatim(yaml), new { car = car.Id, sheet = yaml });
            }));
    }
}
