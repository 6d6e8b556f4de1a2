using System.CommandLine;
using Refettle.Logbook;
using Refettle.Sheets.Edits;
using Spectre.Console;

namespace Refettle.Cli.Verbs;

internal static class SettingsVerb
{
    public static Command Make(Desk desk)
    {
        var values = new Argument<string[]>("key=value")
        { Description = "What to change; nothing to see them.", Arity = ArgumentArity.ZeroOrMore };
        return new Command("settings", "How you count: what an hour is worth, what touching a unique part costs …") { values }
            .Answers(desk, parsed => desk.WithCar(parsed, open => Reply.To(KeyValue.Read(parsed.GetValue(values) ?? []), keys =>
                keys.Count == 0 ? Shown(open.Car) : Reply.To(SettingsEdit.Of(open.Car.Settings, keys), settings =>
                    desk.Record(open, [new SettingsChosen(settings)], now => Shown(now.Car))))));
    }

    private static Reply Shown(Car car)
    {
        var grid = new Grid();
        grid.AddColumn(new GridColumn().NoWrap());
        grid.AddColumn(new GridColumn().NoWrap());
        grid.AddColumn();
        foreach (var (key, value, means) in SettingsEdit.Rows(car.Settings, car.Currency))
            grid.AddRow(new Text(key), new Text(value), new Text(means));
        return new(grid, new { car = car.Id, settings = car.Settings });
    }
}
