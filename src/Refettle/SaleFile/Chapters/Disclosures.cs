using Refettle.Logbook;

namespace Refettle.SaleFile.Chapters;

/// <summary>Modifications, and equipment that the law has an eye on.</summary>
internal static class Disclosures
{
    public const string MayNotBeLegal = "This may not be legal on the road in your place: ask before you buy, and before you drive.";

    /// <summary>Parts with a duty that are off, too weak, of another kind, or changed on purpose.</summary>
    public static ValueList<(Part Part, string Why)> Touched(Sources from)
    {
        var meant = OpenItems.LeftOff(from).ToHashSet();
        var stories = from.Stories.ToDictionary(story => story.Part.Id);
        return from.Car.Structure.Parts.Where(part => part.Duties.Count > 0)
            .Select(part => (part, Why(from.Car, part, stories.GetValueOrDefault(part.Id), meant))).Where(line => line.Item2 is not null)
            .Select(line => (line.part, line.Item2!)).ToValueList();
    }

    public static Section Of(Sources from)
    {
        var touched = Touched(from);
        var entries = from.Stories.ToDictionary(story => story.Part.Id, story => story.Entries);
        var said = touched.Select(line => (Block)new Said($"{line.Part.Name} ({Duties(line.Part)}): {line.Why}. {MayNotBeLegal}",
            Backing.Warns, entries.GetValueOrDefault(line.Part.Id, []))).ToList();
        var changed = Papers.Statements(from, DeclarationTopic.Modification);
        said.AddRange(changed);
        if (changed.Count > 0 && touched.Count == 0)
            said.Add(new Said(
                $"Where a modification touches emissions or safety: {char.ToLowerInvariant(MayNotBeLegal[0])}{MayNotBeLegal[1..]}",
                Backing.Warns, []));
        if (said.Count == 0)
            said.Add(new Said(
                "No modification is recorded, and no part that the description marks as emissions or safety equipment is off or replaced by another kind.", Backing.Believed, []));
        return new("Disclosures", said.ToValueList());
    }

    private static string? Why(Car car, Part part, PartStory? story, HashSet<string> meant)
    {
        if (meant.Contains($"part {part.Id}"))
            return "changed or left off on purpose";
        if (car.Unsound.Contains(part.Id))
            return "found too weak";
        return story?.Provenance switch
        {
            SaleFile.Provenance.Off => "off the car",
            SaleFile.Provenance.Substituted => "replaced by a part of another kind",
            _ => null,
        };
    }

    private static string Duties(Part part) =>
        string.Join(" and ", part.Duties.Select(duty => duty == Duty.Emissions ? "emissions equipment" : "safety equipment"));
}
