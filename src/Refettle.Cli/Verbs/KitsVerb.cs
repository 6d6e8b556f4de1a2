using System.CommandLine;
using Refettle.Kits;
using Spectre.Console;

namespace Refettle.Cli.Verbs;

internal static class KitsVerb
{
    public static Command Make(Desk desk) => new Command("kits", "The kits that a car can be put together from.")
        .Answers(desk, _ => Reply.To(desk.Kits(), shelf =>
        {
            var table = new Table { Border = TableBorder.None };
            table.AddColumns("Kit", "Sides", "What");
            table.Columns[0].NoWrap();
            foreach (var kit in shelf.Kits)
                table.AddRow(new Text(kit.Id), new Text(Sides(kit)), new Text($"{kit.Name}. {kit.About}"));
            return new(table, new { kits = shelf.Kits.Select(Form).ToValueList() });
        }));

    private static string Sides(Kit kit) => string.Join(' ', kit.Spots.Select(spot => spot.Code()));

    private static object Form(Kit kit) => new
    {
        id = kit.Id,
        name = kit.Name,
        about = kit.About,
        origin = kit.Origin,
        sides = kit.Spots.Select(spot => spot.Code()).ToValueList(),
        holes = kit.Holes.Select(hole => new { hole.Name, hole.Role, hole.Means, optional = hole.IsOptional }).ToValueList(),
        parts = kit.Template.Parts.Count,
        joints = kit.Template.Joints.Count,
    };
}
