using Refettle.Stuck;
using Refettle.Timeline;
using Refettle.Timeline.Network;

namespace Refettle.Forecast.OfCar;

/// <summary>When will this car be finished?</summary>
public sealed record CarForecastQuestion
{
    /// <summary>One spell in ten is lost to something else. Common practice, no source.</summary>
    public const double UsuallyMissed = 0.1;

    public required Car Car { get; init; }

    /// <summary>The tasks, derived from this car, and what was noted about them.</summary>
    public required TaskNetwork Network { get; init; }

    /// <summary>The tasks laid onto the calendar.</summary>
    public required Projection Projection { get; init; }

    /// <summary>A schedule of these tasks: its order is the one that is followed. Null for the order of the tasks themselves.</summary>
    public Schedule? Schedule { get; init; }

    public LadderSet Ladders { get; init; } = new([]);

    public OverrunBelief Overrun { get; init; } = OverrunBelief.Start;

    /// <summary>How suppliers and shops keep their promises; others are as such usually are.</summary>
    public ValueList<KnownLateness> Keeping { get; init; } = [];

    /// <summary>The chance that a spell of the owner is lost, 0 to 1; null for <see cref="UsuallyMissed"/>.</summary>
    public double? Missed { get; init; }

    public double Confidence { get; init; } = 0.8;

    public int Futures { get; init; } = ForecastQuestion.DefaultFutures;

    public ulong Seed { get; init; } = 1;
}
