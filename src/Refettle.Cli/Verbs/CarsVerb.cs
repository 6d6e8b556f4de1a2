using System.CommandLine;
using Spectre.Console;

namespace Refettle.Cli.Verbs;

internal static class CarsVerb
{
    public static Command Make(Desk desk) => new Command("cars", "The cars in the store.")
        .Answers(desk, parsed => desk.WithLogbook(parsed, logbook =>
        {
            var cars = logbook.Cars();
            if (cars.Count == 0)
                return Reply.Said("No car yet. Begin one: refettle new NAME. Or make the demo: refettle demo.", new { cars });
            var last = cars.MaxBy(car => car.LastPosition);
            var table = new Table { Border = TableBorder.None, ShowHeaders = false };
            table.AddColumns("", "", "");
            foreach (var car in cars)
                table.AddRow(new Text(car.Id), new Text(car.Name), new Text(car == last ? "written to last" : ""));
            return new(table, new { cars });
        }));
}
