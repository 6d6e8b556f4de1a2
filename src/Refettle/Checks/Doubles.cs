namespace Refettle.Checks;

/// <summary>What a corner hardly has twice: two kits in the place of one. It is noted, never refused.</summary>
/// <remarks>Common practice, no source. Some cars have a small drum inside the disc.</remarks>
public static class Doubles
{
    private static readonly ValueList<string>[] _oneOf = [["hub"], ["wheel"], ["brake-disc", "brake-drum"]];

    /// <summary>A note for each thing of an addition that comes to where the car has its like already.</summary>
    public static ValueList<Fault> Of(Structure car, Structure added)
    {
        var ids = added.Parts.Select(part => part.Id).ToHashSet();
        var here = car.Parts.Where(part => !ids.Contains(part.Id)).ToList();
        return (from part in added.Parts
                where Spots.Of(part).IsCorner()
                from other in here
                where Spots.Of(other) == Spots.Of(part)
                    && _oneOf.Any(roles => part.Roles.Any(roles.Contains) && other.Roles.Any(roles.Contains))
                select Note(part, other)).ToValueList();
    }

    private static Fault Note(Part part, Part other) => new($"part {part.Id}", $"the car has {other.Name} there already",
        "If it is one or the other, undo this addition and say the sides that it is for.")
    { Severity = Severity.Note };
}
