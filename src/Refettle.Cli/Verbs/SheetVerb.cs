using System.CommandLine;

namespace Refettle.Cli.Verbs;

internal static class SheetVerb
{
    public static Command Make(Desk desk)
    {
        var files = new Argument<string[]>("file") { Description = "A sheet in YAML; or two tables in CSV: parts, joints.", Arity = new(1, 2) };
        return new Command("sheet", "Takes a sheet into the car: what has the same identifier is replaced.") { files }
            .Answers(desk, parsed => desk.WithCar(parsed, open =>
            {
                var given = parsed.GetRequiredValue(files).Select(desk.PathOf).ToArray();
                return Reply.To(SheetFiles.Read(given), sheet =>
                {
                    var name = string.Join(" and ", given.Select(Path.GetFileName));
                    return Change.Record(desk, open, $"sheet {name}", sheet.Structure, $"Taken from {name}: {sheet.Structure.Parts.Count} parts, {sheet.Structure.Joints.Count} joints.");
                });
            }));
    }
}
