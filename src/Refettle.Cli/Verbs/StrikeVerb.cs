using System.CommandLine;
using Refettle.Cli.Views;
using Refettle.Logbook;

namespace Refettle.Cli.Verbs;

internal static class StrikeVerb
{
    public static Command Make(Desk desk)
    {
        var entry = new Argument<string>("entry") { Description = "The entry's mark as the log shows it, or \"last\"." };
        var why = new Option<string>("--why") { Description = "The reason." };
        var line = new Option<bool>("--line")
        { Description = "With it all that was written in one go with it, such as a line that said two things." };
        return new Command("strike", "Undoes an entry: it stays in the log and no longer counts. Striking a strike restores.") { entry, why,
            line }
            .Answers(desk, parsed => desk.WithCar(parsed, open => Reply.To(Marks.Find(open, parsed.GetRequiredValue(entry)), found =>
                Strike(desk, open, found, parsed.GetValue(line), parsed.GetValue(why)))));
    }

    /// <summary>The newest first, so that none stands on one that is gone.</summary>
    private static Reply Strike(Desk desk, OpenCar open, Guid entry, bool whole, string? why)
    {
        var together = WrittenTogether.With(open.History, entry).Where(one => one.Entry.Id == entry || one.Standing != Standing.Struck)
            .Select(one => one.Entry.Id).ToList();
        var struck = whole ? Enumerable.Reverse(together).ToList() : [entry];
        var left = together.Count - struck.Count;
        var says = struck.Count == 1
            ? $"Entry {LogVerb.Mark(entry)} no longer counts."
            : $"Entries {string.Join(", ", struck.Select(LogVerb.Mark))} no longer count.";
        var more = left == 0
            ? ""
            : $" {Wording.Count(left, "entry that was", "entries that were")} written with it still {(left == 1 ? "counts" : "count")}: refettle strike {LogVerb.Mark(together.First(one => one != entry))} --line.";
        return desk.Record(open, [.. struck.Select(one => new Struck(one, why))], now => Stands.After(now, says + more));
    }
}
