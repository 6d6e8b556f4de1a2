using Refettle.CloseUp;
using Refettle.Logbook;

namespace Refettle.SaleFile.Chapters;

/// <summary>Wheel angles before and after.</summary>
internal static class Aligned
{
    public static IEnumerable<Block> Of(Sources from)
    {
        var measured = from.InForce<AlignmentMeasured>().ToList();
        var (found, set) = (measured.Where(line => line.Told.AsFound).ToList(), measured.Where(line => !line.Told.AsFound).ToList());
        var last = found.TakeLast(1).Concat(set.TakeLast(1)).ToList();
        var rows = RideHeightLedger.Corners
            .Select(corner => Row(EntryWords.Corner(corner), last,
                told => told.Wheels.FirstOrDefault(wheel => wheel.Corner == corner) is { } wheel ? AlignmentWords.Of(wheel) : null))
            .Append(Row("Thrust line", last, told => told.ThrustRight is { } thrust ? AlignmentWords.Thrust(thrust) : null)).OfType<Row>()
            .ToValueList();
        if (rows.Count > 0)
        {
            yield return new Table(["Wheel", "As found", "As set"], rows);
            yield return new Said("Degrees; toe is of each wheel, toe-in positive; camber positive with the top outward.", Backing.Explains,
                []);
            foreach (var (entry, told) in last)
                yield return new Said(
                    $"{(told.AsFound ? "As found" : "As set")}: measured {entry.Day:yyyy-MM-dd}{EntryWords.With(" with ", told.Instrument)}{EntryWords.With(" by ", told.By)}.", Backing.Recorded, [entry.Number]);
        }

        if (set.Count == 0)
            yield return new Said(found.Count == 0
                ? "No wheel alignment is recorded by this log unless a note or statement says so: have it measured."
                : "No wheel alignment is recorded after the work: have it measured.", Backing.Warns, []);
    }

    private static Row? Row(string name, List<(SeenEntry Entry, AlignmentMeasured Told)> last, Func<AlignmentMeasured, string?> of)
    {
        string Cell(bool asFound) =>
            last.Where(line => line.Told.AsFound == asFound).Select(line => of(line.Told)).FirstOrDefault() ?? "not recorded";
        var entries = last.Where(line => of(line.Told) is not null).Select(line => line.Entry.Number).Order().ToValueList();
        return entries.Count == 0 ? null : new([name, Cell(true), Cell(false)], entries);
    }
}
