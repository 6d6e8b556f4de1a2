namespace Refettle.Scope;

/// <summary>What there is to spend on the jobs of a car, and how its owner counts. Null is no limit.</summary>
public sealed record ScopeQuestion
{
    /// <summary>Money for parts, material, outside work and what opening destroys or uses up.</summary>
    public Money? Budget { get; init; }

    /// <summary>The owner's own time: opening, closing and the jobs' own work.</summary>
    public Minutes? Hours { get; init; }

    /// <summary>The day by which all has to be done.</summary>
    public DateLimit? Until { get; init; }

    /// <summary>Money that an hour of work is worth, 1 or more.</summary>
    public required Money PerHour { get; init; }

    /// <summary>Money that a point is worth; needed as soon as a worth is in points.</summary>
    public Money? PerPoint { get; init; }

    /// <summary>Jobs that are in, as if they were musts.</summary>
    public ValueList<string> Also { get; init; } = [];

    /// <summary>Jobs that are left alone.</summary>
    public ValueList<string> Leave { get; init; } = [];

    /// <summary>The time there is: the owner's hours or what the spells until the day hold, whichever is less.</summary>
    public Minutes? Time => (Hours, Until?.Spells) switch
    {
        ({ } hours, { } spells) => hours < spells ? hours : spells,
        var (hours, spells) => hours ?? spells,
    };

    /// <summary>The question that a car's means ask.</summary>
    /// <param name="car">The car.</param>
    /// <param name="today">The day the question is asked.</param>
    /// <param name="spells">Time that the spells until the day hold; null when none are known.</param>
    public static ScopeQuestion Of(Car car, DateOnly today, Minutes? spells = null) => new()
    {
        Budget = car.Means.Budget,
        Hours = car.Means.Hours,
        Until = car.Means.By is { } day ? new(Math.Max(0, day.DayNumber - today.DayNumber), spells) : null,
        PerHour = car.Settings.PerHour,
        PerPoint = car.Means.PerPoint,
    };
}

/// <summary>A day in the future.</summary>
/// <param name="Days">Days until then, 0 or more. A job whose waits alone take longer cannot be done.</param>
/// <param name="Spells">Time that the spells until then hold; null when none are known.</param>
public sealed record DateLimit(int Days, Minutes? Spells);
