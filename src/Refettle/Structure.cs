namespace Refettle;

/// <summary>Parts that can leave the car as one unit and be split up on the bench.</summary>
public sealed record SubAssembly
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    /// <summary>Two or more parts.</summary>
    public required ValueList<string> Members { get; init; }

    public WayOut Out { get; init; } = WayOut.AtOnce;

    public string? Prop { get; init; }

    /// <summary>What it can be to parts of other kits: they join it by these.</summary>
    public ValueList<string> Roles { get; init; } = [];

    public string? Kit { get; init; }
}

/// <summary>A cavity or surface that parts close off.</summary>
public sealed record Space
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    public string Zone { get; init; } = Refettle.Zone.WholeCar;

    /// <summary>It can be reached while all of these are off.</summary>
    public required ValueList<string> ClosedBy { get; init; }

    /// <summary>What readings of it may be, as its sheet says; the owner's own entry comes before.</summary>
    public ValueList<StatedLimit> Limits { get; init; } = [];

    public string? Kit { get; init; }
}

/// <summary>A region of the car: one place to work, one exposure to weather.</summary>
public sealed record Zone
{
    /// <summary>The zone of what has none.</summary>
    public const string WholeCar = "car";

    public required string Id { get; init; }

    public required string Name { get; init; }

    /// <summary>0 (dry cabin) to 4 (salt spray), a scale after ISO 9223; placing a zone on it is judgement.</summary>
    public int Exposure { get; init; }

    /// <summary>How one works there: <c>standing</c>, <c>under</c>, <c>inside</c>.</summary>
    public string Posture { get; init; } = "standing";

    /// <summary>Zones that flame, sparks or heat from here can reach; empty when nothing is said: then all count as near.</summary>
    public ValueList<string> Near { get; init; } = [];
}

/// <summary>What a car is made of. The order of the lists means nothing.</summary>
public sealed record Structure
{
    public static Structure Empty { get; } = new();

    public ValueList<Zone> Zones { get; init; } = [];

    public ValueList<State> States { get; init; } = [];

    public ValueList<Part> Parts { get; init; } = [];

    public ValueList<Joint> Joints { get; init; } = [];

    public ValueList<SubAssembly> SubAssemblies { get; init; } = [];

    public ValueList<Space> Spaces { get; init; } = [];

    /// <summary>Connections of added kits that found nothing on this car yet.</summary>
    public ValueList<LooseEnd> LooseEnds { get; init; } = [];

    /// <summary>What a part is called; its identifier where there is none of that.</summary>
    public string PartName(string part) => Parts.FirstOrDefault(one => one.Id == part)?.Name ?? part;
}
