using System.CommandLine;
using Refettle.Cli.Forms;
using Refettle.Kits;
using Spectre.Console;

namespace Refettle.Cli.Verbs;

internal static class LooseVerb
{
    public static Command Make(Desk desk)
    {
        var all = new Option<bool>("--all") { Description = "Also those that many cars do not have." };
        return new Command("loose",
            "Connections that found nothing on the car yet, and what could fill them, and which kits would bring it.") { all }
            .Answers(desk, parsed => desk.WithCar(parsed, open =>
            {
                var structure = open.Car.Structure;
                var kits = desk.SoundKits() is { IsGood: true } shelf ? shelf.Value.Kits : [];
                var ends = structure.LooseEnds.Where(end => parsed.GetValue(all) || !end.IsOptional)
                    .Select(end => LooseEndForm.Of(end,
                        Tying.Propose([end], structure, new Dictionary<string, string>()).Select(tie => tie.Part),
                        Fillers.Of(end, kits))).ToValueList();
                return new(View(ends), new { looseEnds = ends });
            }));
    }

    private static Spectre.Console.Rendering.IRenderable View(ValueList<LooseEndForm> ends)
    {
        if (ends.Count == 0)
            return new Text("No loose ends.");
        var table = new Table { Border = TableBorder.None };
        table.AddColumns("Loose end", "Could be", "Kits that bring it", "Meanwhile");
        table.Columns[0].NoWrap();
        foreach (var end in ends)
            table.AddRow(new Text(end.End), new Text(string.Join(", ", end.Proposed)), new Text(string.Join(", ", end.Kits)),
                new Text(end.Meanwhile));
        return table;
    }
}
