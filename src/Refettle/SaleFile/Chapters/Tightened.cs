using Refettle.CloseUp;
using Refettle.Logbook;

namespace Refettle.SaleFile.Chapters;

/// <summary>Torque, alignment and checks as recorded.</summary>
internal static class Tightened
{
    public static Section Of(Sources from)
    {
        var counts = from.Closing.Tightenings.Select(tightening => tightening.Joint).ToHashSet();
        var last = from.InForce<JointTightened>().Where(line => counts.Contains(line.Told.Joint)).GroupBy(line => line.Told.Joint)
            .Select(joint => joint.Last()).ToList();
        var blocks = new List<Block>
        {
            new Said(last.Count == 0
                ? "No tightening is recorded."
                : "The last tightening of each joint since it was last opened. The figure is the reading or setting that was entered; nobody has checked it since.", Backing.Explains, []),
        };
        if (last.Count > 0)
            blocks.Add(new Table(["Joint", "Tightened", "Wanted", "Day"],
                last.Select(line => Row(from, line.Entry, line.Told)).ToValueList()));
        blocks.AddRange(Alignment(from));
        return new("Torque and alignment record", blocks.ToValueList());
    }

    private static Row Row(Sources from, SeenEntry entry, JointTightened told) =>
        from.Undecided.FirstOrDefault(conflict => conflict.Joint == told.Joint) is { } conflict ? new(
        [from.Names.OfJoint(told.Joint),
            $"undecided: {string.Join(" or ", conflict.Told.Select(one => $"{one.Torque}"))}, neither knew of the other",
            Wanted(from.Names.Joint(told.Joint)), $"{entry.Day:yyyy-MM-dd}"],
        conflict.Told.Select(one => from.NumberOf[one.Entry]).Order().ToValueList())
    : new(
        [from.Names.OfJoint(told.Joint), EntryWords.Tight(told), Wanted(from.Names.Joint(told.Joint)), $"{entry.Day:yyyy-MM-dd}"],
        [entry.Number]);

    private static string Wanted(Joint? joint) => joint?.Torque is { } torque
        ? $"{torque} ({(joint.Origin == Origin.Maker ? "maker's manual" : "not the maker's figure")}{(joint.AtRideHeight ? ", at ride height" : "")})"
        : "no figure known";

    private static IEnumerable<Block> Alignment(Sources from)
    {
        var heights = from.InForce<HeightMeasured>().GroupBy(line => line.Told.Corner).Select(corner => corner.Last()).ToList();
        if (heights.Count > 0)
            yield return new Table(["Corner", "Ride height, hub centre to wheel arch"], heights.Select(line =>
                new Row([EntryWords.Corner(line.Told.Corner), $"{line.Told.Height}"], [line.Entry.Number])).ToValueList());
        var rubber = from.RideHeight.Where(line => line.Joint.AtRideHeight).ToList();
        var settled = rubber.Count(line => line.Standing == RideHeightStanding.Settled);
        if (rubber.Count > 0)
            yield return new Said(
                $"Of {Sources.Count(rubber.Count, "joint")} with bonded rubber that {(rubber.Count == 1 ? "was" : "were")} opened or tightened, {settled} {(settled == 1 ? "is" : "are")} recorded as torqued at ride height.", Backing.Recorded,
from.NumbersOf("step-done", "joint-tightened"));
        foreach (var block in Aligned.Of(from).Concat(Checked.Of(from)))
            yield return block;
    }
}
