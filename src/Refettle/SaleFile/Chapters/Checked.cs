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
        from.ChecksDue
            .Select(check => new Row([check.Says, "opened work asks for it, and it is not marked as done since"],
                Marks(from, check.Id).Select(mark => mark.Number).ToValueList()));

    public static IEnumerable<Block> Of(Sources from)
    {
        var rows = _known.Where(check => IsSeen(from, check.Task))
            .Select(check => (check.Says, Mark: Marks(from, check.Task).LastOrDefault())).Where(check => check.Mark is not null)
            .Select(check => new Row([check.Says, $"{check.Mark!.Day:yyyy-MM-dd}"], [check.Mark.Number])).ToValueList();
        if (rows.Count == 0)
            yield break;
        yield return new Table(["Check at the end", "Marked as done"], rows);
        yield return new Said("A mark is the owner's word; how a check went is known only where a note or reading says so.",
            Backing.Explains, []);
    }

    /// <summary>Nothing that asks for it is left, and something that it is about was closed when it was marked: a
    /// mark on open brakes bled nothing.</summary>
    private static bool IsSeen(Sources from, string task) =>
        from.ChecksDue.All(check => check.Id != task) && !(task == EndChecks.Bleed && from.IsToBleed)
        && from.Car.Disturbed
            .Any(one => one.Since.Contains(task) && from.Names.Joint(one.Fact.Subject) is { } joint && IsAbout(task, joint, from.Names));

    private static bool IsAbout(string task, Joint joint, CarNames names) => task switch
    {
        EndChecks.Bleed => EndChecks.IsHydraulic(joint, names.Part),
        Disturbed.RideHeight or EndChecks.Settle or EndChecks.Alignment => joint.AtRideHeight,
        _ => true,
    };

    private static IEnumerable<SeenEntry> Marks(Sources from, string task) =>
        from.InForce<TaskMarked>().Where(line => line.Told.Mark.Task == task && line.Told.Mark.Progress == TaskProgress.Done)
            .Select(line => line.Entry);
}
