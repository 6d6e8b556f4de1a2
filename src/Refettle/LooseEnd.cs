namespace Refettle;

/// <summary>A connection that a kit offers and that the car has no counterpart for yet. It keeps what waits for it, so that it can
/// be tied later without the kit at hand.</summary>
public sealed record LooseEnd
{
    /// <summary>The kit, with prefix, that asks.</summary>
    public required string Kit { get; init; }

    /// <summary>The name of the hole in the kit.</summary>
    public required string Hole { get; init; }

    /// <summary>The role that a part must have to fill it.</summary>
    public required string Role { get; init; }

    /// <summary>Where on the car to look for that part.</summary>
    public Spot Spot { get; init; }

    /// <summary>Parts whose identifiers begin with this come first; empty for no preference.</summary>
    public string Prefix { get; init; } = "";

    /// <summary>Many cars have no counterpart: not worth a reminder.</summary>
    public bool IsOptional { get; init; }

    /// <summary>What is left undescribed meanwhile, in words.</summary>
    public required string Meanwhile { get; init; }

    /// <summary>Joints, sub-assemblies and spaces that cannot be described before; <c>{hole}</c> stands
    /// where the part's identifier will.</summary>
    public Structure Waits { get; init; } = Structure.Empty;

    /// <summary>Mentions of the hole that were left out of things on the car.</summary>
    public ValueList<Mention> Mentions { get; init; } = [];

    /// <summary>How an addition names the loose ends that it ties: <c>kit/hole</c>.</summary>
    public string Key() => $"{Kit}/{Hole}";
}

/// <summary>A name or fact that belongs into a list of a thing once a loose end is tied.</summary>
/// <param name="Thing"><c>part x</c>, <c>joint x</c> …, or <c>sub-assembly {hole}</c>.</param>
/// <param name="List">The list, by the keys of the car sheet: <c>out.clear</c>, <c>members</c>, <c>closed-by</c>,
/// <c>supports</c>, and <c>way:cut.clear</c>,
/// <c>way:cut.destroys</c> for the way <c>cut</c>.</param>
/// <param name="Text">What belongs there, with <c>{hole}</c> for the part: <c>off({wheel})</c>.</param>
public sealed record Mention(string Thing, string List, string Text);
