namespace Refettle.Kits;

/// <summary>An assembly described once, to be added to a car for each side it has.</summary>
public sealed record Kit
{
    /// <summary>The name by which it is asked for.</summary>
    public required string Id { get; init; }

    public required string Name { get; init; }

    /// <summary>What it is, in a sentence.</summary>
    public string About { get; init; } = "";

    /// <summary>Where its figures come from.</summary>
    public required string Origin { get; init; }

    /// <summary>The corners or sides it can be added to; empty for a kit without sides.</summary>
    public ValueList<Spot> Spots { get; init; } = [];

    /// <summary>The zone of its own; may hold <c>{side}</c>.</summary>
    public string Zone { get; init; } = Refettle.Zone.WholeCar;

    public ValueList<Hole> Holes { get; init; } = [];

    /// <summary>What it brings. Texts may hold <c>{p}</c>, <c>{side}</c>, <c>{Side}</c>, <c>{zone}</c>
    /// and the names of holes in braces.</summary>
    public Structure Template { get; init; } = Structure.Empty;

    /// <summary>What is worth doing while it is open, as jobs that may be entered. Texts may hold <c>{p}</c>,
    /// <c>{side}</c> and <c>{Side}</c>.</summary>
    public ValueList<Job> WhileOpen { get; init; } = [];
}

/// <summary>A connection to a part that the car has or will have.</summary>
public sealed record Hole
{
    public required string Name { get; init; }

    /// <summary>The role that the part must have.</summary>
    public required string Role { get; init; }

    /// <summary>What the connection is, in words.</summary>
    public string Means { get; init; } = "";

    public bool IsOptional { get; init; }

    public HoleSide Side { get; init; }

    /// <summary>Parts of the kit that belong to the sub-assembly with that role; empty for a connection to a part.</summary>
    public ValueList<string> Joins { get; init; } = [];

    /// <summary>Where to look for the part when the kit is added at a spot.</summary>
    public Spot SpotFor(Spot kit) => Side switch
    {
        HoleSide.Own => kit,
        HoleSide.None => Spot.None,
        HoleSide.Front => Spots.Front(kit.Side()),
        HoleSide.Rear => Spots.Rear(kit.Side()),
        _ => Spot.Left + (Side - HoleSide.Left),
    };
}

/// <summary>Where a hole looks.</summary>
public enum HoleSide
{
    /// <summary>Where the kit is added.</summary>
    Own,

    /// <summary>For a part without side.</summary>
    None,

    /// <summary>The front corner of the kit's side.</summary>
    Front,

    /// <summary>The rear corner of the kit's side.</summary>
    Rear,

    Left,
    Right,
    FrontLeft,
    FrontRight,
    RearLeft,
    RearRight,
}
