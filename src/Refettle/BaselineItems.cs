namespace Refettle;

/// <summary>One thing to know of the car before the first bolt: it cannot be found out later.</summary>
/// <param name="Asks">What to do, in words.</param>
public sealed record BaselineItem(string Id, string Asks);

/// <summary>What is asked before the strip begins. Common practice, no source.</summary>
public static class BaselineItems
{
    /// <summary>Settled by a recorded alignment.</summary>
    public const string Alignment = "alignment";

    public const string Heights = "ride-heights";
    public const string Photos = "photos";

    public static ValueList<BaselineItem> All { get; } =
    [
        new("road-test", "Road test, if it may be driven: noises, pull, brakes, gears, temperatures"),
        new("works", "What works: every switch, lamp, motor, lock and gauge"),
        new("does-not-work", "What does not work"),
        new("compression", "Compression of each cylinder, throttle open, engine warm if it runs"),
        new(Alignment, "Alignment as found: camber, caster, toe, with the tyre pressures"),
        new(Heights, "Ride heights: hub centre to wheel arch, four corners, on its wheels"),
        new("match-marks", "Match marks: propshafts, cam adjusters, hinges, everything that has a position"),
        new("shims", "Shims and washers: how many, where, how thick"),
        new(Photos, "Photos of every side, corner, the engine bay, underneath, the cabin: looked at, and sharp"),
    ];
}

/// <summary>An item of the list with what is known of it.</summary>
/// <param name="IsSettled">Whether it is done, or said why not.</param>
/// <param name="Says">What is known; null when nothing is.</param>
public sealed record BaselineLine(BaselineItem Item, bool IsSettled, string? Says);
