using Refettle.Logbook;
using Refettle.Timeline.Network;

namespace Refettle.SaleFile.Chapters;

/// <summary>The checks once all is closed: which are marked as done, and which are still due.</summary>
internal static class Checked
{
    private static readonly (string Task, string Says)[] _known =
    [
        (EndChecks.Bleed, "Brakes bled"),
        (Disturbed.RideHeight, "Joints with bonded rubber torqued at ride height"),
        (EndChecks.Settle, "Rolled until it settled"),
        (EndChecks.Alignment, "Wheels aligned"),
        (EndChecks.RoadTest, "Driven on trial"),
        (EndChecks.Again, "Wheel nuts and torques looked at once more after the first drives"),
    ];

    /// <summary>What was opened and asks for it, and no mark says that it was done since.</summary>
    public static IEnumerable<Row> Due(Sources from) =>
        from.ChecksDue.Select(check => new Row([check.Says, "opened work asks for it, and it is not marked as done since"], Marks(from, check.Id).Select(mark => mark.Number).ToValueList()));

    public static IEnumerable<Block> Of(Sources from)
    {
        var due = from.ChecksDue.Select(check => check.Id).ToHashSet();
        var rows = _known.Where(check => !due.Contains(check.Task)).Select(check => (check.Says, Mark: Marks(from, check.Task).LastOrDefault())).Where(check => check.Mark is not null)
            .Select(check => new Row([check.Says, $"{check.Mark!.Day:yyyy-MM-dd}"], [check.Mark.Number])).ToValueList();
        if (rows.Count == 0)
            yield break;
        yield return new Table(["Check at the end", "Marked as done"], rows);
        yield return new Said("A mark is the owner's word; how a check went is known only where a note or reading says so.", Backing.Explains, []);
    }

    private static IEnumerable<SeenEntry> Marks(Sources from, string task) =>
        from.InForce<TaskMarked>().Where(line => line.Told.Mark.Task == task && line.Told.Mark.Progress == TaskProgress.Done).Select(line => line.Entry);
}
