namespace Refettle;

/// <summary>What a reading of a part, joint or space may be, as the sheet or kit that describes the thing says it.</summary>
/// <param name="What">What is measured; of one thing each once, capitals do not matter.</param>
/// <param name="Lower">In the unit; null when there is no least.</param>
/// <param name="Upper">In the unit; null when there is no most.</param>
/// <param name="Unit">A unit that the bench numbers know.</param>
/// <param name="Origin">Whose word it is; never a default.</param>
/// <param name="Source">Where it stands: a page of the manual, a drawing.</param>
public sealed record StatedLimit(string What, decimal? Lower, decimal? Upper, string Unit, Origin Origin, string? Source)
{
    /// <param name="thing"><c>part x</c>, <c>joint x</c> or <c>space x</c>.</param>
    public Limit For(string thing) => new(thing, What, Lower, Upper, Unit, Origin, Source);
}

/// <summary>The limits that hold for a car: the owner's own entries, and what its sheet says where he entered none.</summary>
public static class LimitsInForce
{
    /// <summary>In order of thing and quantity.</summary>
    public static ValueList<Limit> Of(Structure structure, IEnumerable<Limit> entered) => entered.Concat(Stated(structure))
        .DistinctBy(limit => (limit.Of, limit.What.ToUpperInvariant()))
        .OrderBy(limit => limit.Of, StringComparer.Ordinal).ThenBy(limit => limit.What, StringComparer.Ordinal).ToValueList();

    private static IEnumerable<Limit> Stated(Structure structure) =>
        structure.Parts.SelectMany(part => part.Limits.Select(limit => limit.For($"part {part.Id}")))
            .Concat(structure.Joints.SelectMany(joint => joint.Limits.Select(limit => limit.For($"joint {joint.Id}"))))
            .Concat(structure.Spaces.SelectMany(space => space.Limits.Select(limit => limit.For($"space {space.Id}"))));
}
