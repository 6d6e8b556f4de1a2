using Refettle.Logbook;

namespace Refettle.SaleFile.Chapters;

/// <summary>The first page: at most 250 words and two pictures.</summary>
internal static class Summary
{
    public const int MostWords = 250;
    public const int MostPictures = 2;

    private const int MostNames = 8;

    public static Section Of(Sources from)
    {
        var said = new List<Block> { Kept(from) };
        said.AddRange(Snapshots.OfSummary(from));
        said.AddRange(Done(from));
        said.AddRange(Left(from));
        said.Add(new Said(
            "Every statement names the entries it rests on; what no entry shows is worded as belief. How to check the file, and what that cannot prove, is on the last pages.", Backing.Explains, []));
        return new("Summary", said.ToValueList());
    }

    private static Said Kept(Sources from)
    {
        var days = from.Entries.Select(entry => entry.Day).Distinct().Order().ToList();
        var car = from.Car.Year is { } year ? $"{from.Car.Name}, {year}" : from.Car.Name;
        return days.Count == 0
            ? new($"{car}. The log has no entries.", Backing.Explains, [])
            : new($"{car}. This file is the car's working log from {days[0]:yyyy-MM-dd} to {days[^1]:yyyy-MM-dd}: {Sources.Count(from.Entries.Count, "entry", "entries")}, written while the work was done.",
                Backing.Recorded, [1, .. from.Entries.Count > 1 ? [from.Entries.Count] : Array.Empty<int>()]);
    }

    private static IEnumerable<Block> Done(Sources from)
    {
        var stories = from.Stories.Where(story => story.Provenance != SaleFile.Provenance.StayedOn).ToList();
        if (stories.Count > 0)
            yield return new Said(
                $"Work is recorded on {Sources.Count(from.WorkDays.Count(), "day")}. {Sources.Count(stories.Count, "part was", "parts were")} taken off, {stories.Count(story => story.Provenance != SaleFile.Provenance.Off)} of them fitted again{Renewed(stories)}.",
                Backing.Recorded, Few(stories.SelectMany(story => story.Entries)));
        var torqued = from.Closing.Tightenings.Where(tightening => tightening.How == Tightness.Torqued)
            .Select(tightening => tightening.Joint).ToHashSet();
        if (from.Closing.Opened.Count > 0)
            yield return new Said(
                $"{Sources.Count(from.Closing.Opened.Count, "joint was", "joints were")} opened; for {torqued.Intersect(from.Closing.Opened).Count()} a torque is recorded since.", Backing.Recorded,
Few(from.NumbersOf("step-done", "joint-tightened")));
    }

    private static string Renewed(List<PartStory> stories)
    {
        (Provenance Is, string Word)[] words = [(SaleFile.Provenance.New, "new"), (SaleFile.Provenance.Refurbished, "refurbished"),
            (SaleFile.Provenance.Used, "used"), (SaleFile.Provenance.Substituted, "of another kind")];
        var counts = words.Select(word => (Count: stories.Count(story => story.Provenance == word.Is), word.Word))
            .Where(one => one.Count > 0).Select(one => $"{one.Count} {one.Word}").ToList();
        return counts.Count == 0 ? "" : $" ({string.Join(", ", counts)})";
    }

    private static IEnumerable<Block> Left(Sources from)
    {
        var open = OpenItems.Count(from) + from.Declared.Count(line => line.Told.Topic == DeclarationTopic.Open);
        yield return new Said(open == 0
            ? "Nothing is recorded as open."
            : $"{Sources.Count(open, "item is", "items are")} open and listed.", Backing.Warns, []);
        var touched = Disclosures.Touched(from);
        if (touched.Count > 0)
            yield return new Said($"Emissions or safety equipment is concerned: {Named(touched)}. {Disclosures.MayNotBeLegal}",
                Backing.Warns, []);
        if (from.Privacy.LeftOut.Count > 0)
            yield return new Said(
                $"Left out by the owner: {string.Join(", ", from.Privacy.LeftOut)}. What is left out is blacked out in the entries, which can be checked all the same.", Backing.Explains, []);
    }

    private static string Named(ValueList<(Part Part, string Why)> touched) => touched.Count <= MostNames
        ? string.Join(", ", touched.Select(line => line.Part.Name))
        : $"{string.Join(", ", touched.Take(MostNames).Select(line => line.Part.Name))} and {touched.Count - MostNames} more";

    /// <summary>First and last stand for all: the chapters name each.</summary>
    private static ValueList<int> Few(IEnumerable<int> numbers)
    {
        var all = numbers.Distinct().Order().ToList();
        return all.Count <= 4 ? all.ToValueList() : [all[0], all[1], all[^2], all[^1]];
    }
}
