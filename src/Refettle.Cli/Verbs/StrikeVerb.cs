using System.CommandLine;
using Refettle.Logbook;

namespace Refettle.Cli.Verbs;

internal static class StrikeVerb
{
    public static Command Make(Desk desk)
    {
        var entry = new Argument<string>("entry") { Description = "The entry's mark as the log shows it, or \"last\"." };
        var why = new Option<string>("--why") { Description = "The reason." };
        return new Command("strike", "Undoes an entry: it stays in the log and no longer counts. Striking a strike restores.") { entry, why }
            .Answers(desk, parsed => desk.WithCar(parsed, open => Reply.To(Marks.Find(open, parsed.GetRequiredValue(entry)), found =>
                desk.Record(open, [new Struck(found, parsed.GetValue(why))], now => Stands.After(now, $"Entry {LogVerb.Mark(found)} no longer counts.")))));
    }
}
