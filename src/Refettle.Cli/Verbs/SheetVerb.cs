using System.CommandLine;
using Refettle.Cli.Views;

namespace Refettle.Cli.Verbs;

internal static class SheetVerb
{
    public static Command Make(Desk desk)
    {
        var files = new Argument<string[]>("file")
        { Description = "A sheet in YAML; or tables in CSV: parts, then joints.", Arity = new(1, 2) };
        return new Command("sheet", "Takes a sheet into the car: what has the same identifier is replaced.") { files }
            .Answers(desk, parsed => desk.WithCar(parsed, open =>
            {
                var given = parsed.GetRequiredValue(files).Select(desk.PathOf).ToArray();
                return Reply.To(SheetFiles.Structure(given, open.Car.Structure), read =>
                {
                    var name = string.Join(" and ", given.Select(Path.GetFileName));
                    return Change.Record(desk, open, $"sheet {name}", read,
                        $"Taken from {name}: {Wording.Count(read.Parts.Count, "part")}, {Wording.Count(read.Joints.Count, "joint")}.");
                });
            }));
    }
}
