namespace Refettle;

/// <summary>How hard it is to get a part again.</summary>
public enum Scarcity
{
    Stocked,
    UsedOnly,
    Discontinued,

    /// <summary>There is no other: destroying it ends the project.</summary>
    Unique,
}

/// <summary>The side of the car, seen from the driver's seat.</summary>
public enum Side
{
    None,
    Left,
    Right,
}

/// <summary>What a part holds or is made of that can hurt someone or burn.</summary>
public enum Hazard
{
    Fuel,
    BrakeFluid,
    Airbag,
    Rubber,
    Plastic,
    SpringLoad,
    Refrigerant,
    HotCoolant,
    FrictionDust,
    BatteryAcid,
    Oil,

    /// <summary>In old lamp and tilt switches.</summary>
    Mercury,

    /// <summary>It may hold asbestos: old gaskets, seals, mats.</summary>
    Asbestos,
}

/// <summary>What a part does that the law has an eye on: without it, or with another in its place, the
/// car may not be legal on a road.</summary>
public enum Duty
{
    /// <summary>It keeps exhaust gas, fuel vapour or noise within limits.</summary>
    Emissions,

    /// <summary>It protects people: airbags, belts, brakes, lamps.</summary>
    Safety,
}

/// <summary>A thing that can come off the car.</summary>
public sealed record Part
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    /// <summary>The zone it lies in.</summary>
    public string Zone { get; init; } = Refettle.Zone.WholeCar;

    public Side Side { get; init; }

    /// <summary>How many alike come off as this one part (four clips of a strip), 1 or more.</summary>
    public int Count { get; init; } = 1;

    public Scarcity Scarcity { get; init; }

    public Kilograms? Mass { get; init; }

    /// <summary>The price of another one, in the car's currency; null when not known.</summary>
    public Money? Price { get; init; }

    /// <summary>How it leaves the car once its joints are open.</summary>
    public WayOut Out { get; init; } = WayOut.AtOnce;

    /// <summary>Where to hold it up before its last joint opens; null when nothing is said.</summary>
    public string? Prop { get; init; }

    public ValueList<Hazard> Hazards { get; init; } = [];

    public ValueList<Duty> Duties { get; init; } = [];

    /// <summary>The role of what carries a car that stands on its wheels.</summary>
    public const string Wheel = "wheel";

    /// <summary>What it can be to its neighbours (<c>hub</c>, <c>body</c>): kits find their connections by these.</summary>
    public ValueList<string> Roles { get; init; } = [];

    /// <summary>What readings of it may be, as its sheet says; the owner's own entry comes before.</summary>
    public ValueList<StatedLimit> Limits { get; init; } = [];

    /// <summary>The kit, with prefix, that it was added by; null when described by hand.</summary>
    public string? Kit { get; init; }

    /// <summary>The structure the rest hangs on: it never comes off (the body shell).</summary>
    public bool Fixed { get; init; }

    public Origin Origin { get; init; }
}

/// <summary>How a part or sub-assembly is lifted out once nothing holds it.</summary>
public sealed record WayOut
{
    public static WayOut AtOnce { get; } = new();

    /// <summary>Minutes to lift it out.</summary>
    public Minutes Off { get; init; }

    /// <summary>Minutes to put it back in place.</summary>
    public Minutes On { get; init; }

    /// <summary>What must be true first.</summary>
    public ValueList<Fact> Clear { get; init; } = [];

    /// <summary>Tool or helper needed; null for bare hands.</summary>
    public string? Tool { get; init; }

    /// <summary>How it is put in; null when that is the way out turned round.</summary>
    public RefitWay? Refit { get; init; }

    public ValueList<string> Cautions { get; init; } = [];

    public Origin Origin { get; init; }
}
