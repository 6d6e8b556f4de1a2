namespace Refettle.Kits;

/// <summary>Whether the user's choices name holes of the kit, loose ends of the car, and parts of the car.</summary>
internal static class ChoiceCheck
{
    public static IEnumerable<Fault> Of(Structure car, Kit kit, IReadOnlyDictionary<string, string> choices)
    {
        var holes = kit.Holes.Select(hole => hole.Name).ToHashSet();
        var ends = car.LooseEnds.Select(end => end.Key()).ToHashSet();
        var parts = car.Parts.Select(part => part.Id).Concat(car.SubAssemblies.Select(unit => unit.Id)).ToHashSet();
        foreach (var (hole, part) in choices.OrderBy(choice => choice.Key, StringComparer.Ordinal))
        {
            if (ends.Contains(hole))
                continue;
            if (!holes.Contains(hole))
                yield return Unknown($"kit {kit.Id}", $"it has no hole \"{hole}\"", hole, holes, "It has " + string.Join(", ", holes));
            else if (part.Length > 0 && !parts.Contains(part))
                yield return Unknown($"hole {hole}", $"the car has no part or sub-assembly \"{part}\"", part, parts,
                    "Name a part of the car, or leave it empty");
        }
    }

    private static Fault Unknown(string place, string found, string name, IEnumerable<string> names, string otherwise) =>
        new(place, found, NearNames.Ask(name, names, otherwise));
}
