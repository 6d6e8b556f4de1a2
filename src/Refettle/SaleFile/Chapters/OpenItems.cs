using Refettle.CloseUp;
using Refettle.Logbook;

namespace Refettle.SaleFile.Chapters;

/// <summary>What is left to do, and what the owner says of faults.</summary>
internal static class OpenItems
{
    private const int Most = 300;

    /// <summary>What is open by the log, checks at the end among it.</summary>
    public static int Count(Sources from) => Blocks(from).Count + from.ChecksDue.Count;

    private static ValueList<RoadBlock> Blocks(Sources from) => RoadReadiness.Of(from.Car, from.RideHeight, LeftOff(from), from.Undecided);

    /// <summary>What the owner says is off or changed on purpose, of a sub-assembly its parts:
    /// disclosures, not work that is left.</summary>
    public static IEnumerable<string> LeftOff(Sources from) => from.Declared.Where(line => line.Told.Topic == DeclarationTopic.Modification)
        .SelectMany(line => Thing.TryParse(line.Told.About, out var thing) ? Meant(from, thing) : []);

    private static IEnumerable<string> Meant(Sources from, Thing thing) =>
        thing.Kind == ThingKind.SubAssembly ? from.Names.Moved(thing.Id).Select(part => $"part {part}") : [thing.ToString()];

    public static Section Of(Sources from)
    {
        var blocks = Blocks(from);
        var closed = Unrecorded(from);
        var said = new List<Block>();
        if (Count(from) > 0)
            said.Add(new Table(["What", "Why it is open"],
                blocks.Take(Most).Select(block => new Row([from.Names.Of(block.Thing), block.Why], Touching(from, block.Thing)))
                    .Concat(Checked.Due(from)).ToValueList()));
        if (blocks.Count > Most)
            said.Add(new Said($"And {blocks.Count - Most} more of the same kind.", Backing.Warns, []));
        if (closed.Count > 0)
            said.Add(new Said(
                $"Opened and closed again, with no torque recorded since: {string.Join(", ", closed.Select(from.Names.OfJoint))}.",
                Backing.Warns, closed.SelectMany(joint => Touching(from, $"joint {joint}")).Order().ToValueList()));
        said.AddRange(Papers.Statements(from, DeclarationTopic.Open));
        said.Add(new Said(said.Count == 0
            ? "The log has nothing open. That is no promise: brakes, fluids, lamps and tyres are judged by a person, on the car."
            : "What the log does not know of is not listed. Brakes, fluids, lamps and tyres are judged by a person, on the car.",
                Backing.Warns, []));
        return new("Open items", said.ToValueList());
    }

    private static List<string> Unrecorded(Sources from)
    {
        var recorded = from.Closing.Tightenings.Select(tightening => tightening.Joint).ToHashSet();
        return from.Closing.Opened
            .Where(joint => !recorded.Contains(joint) && !from.Car.Done.Contains(Fact.Open(joint))
                && from.Names.Joint(joint)?.Torque is not null).ToList();
    }

    /// <summary>The entries in force that speak of a thing.</summary>
    private static ValueList<int> Touching(Sources from, string about)
    {
        var id = about[(about.IndexOf(' ') + 1)..];
        return from.Entries.Where(entry => entry.Counts && Subject(entry.Told) == id).Select(entry => entry.Number).ToValueList();
    }

    private static string? Subject(Happening? told) => told switch
    {
        StepDone done => done.Fact.Subject,
        StepReversed back => back.Fact.Subject,
        JointTightened tightened => tightened.Joint,
        SoundnessJudged judged => judged.Part,
        Tried tried => tried.Try.Joint,
        _ => null,
    };
}
