using System.CommandLine;
using Refettle.Logbook;

namespace Refettle.Cli.Verbs;

internal static class StrikeVerb
{
    private const int LeastLetters = 4;

    public static Command Make(Desk desk)
    {
        var entry = new Argument<string>("entry") { Description = "The entry's mark as the log shows it, or \"last\"." };
        var why = new Option<string>("--why") { Description = "The reason." };
        return new Command("strike", "Undoes an entry: it stays in the log and no longer counts. Striking a strike restores.") { entry, why }
            .Answers(desk, parsed => desk.WithCar(parsed, open => Reply.To(Find(open, parsed.GetRequiredValue(entry)), found =>
                desk.Record(open, [new Struck(found, parsed.GetValue(why))], now => Stands.After(now, $"Entry {LogVerb.Mark(found)} no longer counts.")))));
    }

    private static Result<Guid> Find(OpenCar open, string mark)
    {
        if (mark == "last")
            return Result<Guid>.Good(open.History.Lines[open.History.Lines.Count - 1].Entry.Id);
        var found = mark.Length < LeastLetters ? [] : open.Entries.Select(entry => entry.Id)
            .Where(id => $"{id:N}".Contains(mark.Replace("-", "", StringComparison.Ordinal), StringComparison.OrdinalIgnoreCase)).ToList();
        return found.Count == 1
            ? Result<Guid>.Good(found[0])
            : Result<Guid>.Bad(new Fault($"entry {mark}", found.Count == 0 ? "the log has no such entry" : $"{found.Count} entries match", "refettle log shows each entry's mark."));
    }
}
