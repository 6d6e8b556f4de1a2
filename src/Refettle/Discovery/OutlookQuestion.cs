using NodaTime;
using Refettle.Logbook;
using Refettle.Stock;
using Refettle.Stuck;
using Refettle.Timeline.Spells;

namespace Refettle.Discovery;

/// <summary>Asks what lies ahead of a car as its log tells it. Jobs are those chosen; verdicts are the
/// owner's, else those suggested.</summary>
public sealed record OutlookQuestion
{
    public required CarHistory History { get; init; }

    /// <summary>What is there for it; needs of other cars are not counted here.</summary>
    public required Shelf Shelf { get; init; }

    public LadderSet Ladders { get; init; } = new([]);

    public required Instant Now { get; init; }

    /// <summary>How sure an order must be to come in time, above 0, below 1.</summary>
    public double Confidence { get; init; } = 0.8;

    public Car Car => History.Car;

    /// <summary>By the clock on the garage's wall.</summary>
    public DateOnly Today => WallClock.Of(Car.Calendar, Now).Today.ToDateOnly();
}
