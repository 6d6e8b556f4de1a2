using Refettle.Timeline;

namespace Refettle.Forecast;

/// <summary>When will it be finished?</summary>
public sealed record ForecastQuestion
{
    public const int DefaultFutures = 20_000;

    public required Project Project { get; init; }

    /// <summary>One for each activity, in the project's order.</summary>
    public required ValueList<Uncertainty> Uncertainties { get; init; }

    /// <summary>The policy of every future: places of all activities, each after what it waits for. Each is put, in this order, where it
    /// can start first. See <see cref="ListOrder"/>.</summary>
    public required ValueList<int> Order { get; init; }

    public ValueList<HiddenLevel> Levels { get; init; } = [];

    public ValueList<MissedSpells> Missed { get; init; } = [];

    /// <summary>What is known of the user's overrun.</summary>
    public OverrunBelief Overrun { get; init; } = OverrunBelief.Start;

    /// <summary>Spells that could be added: each is asked whether it would help.</summary>
    public ValueList<ExtraSpell> Extra { get; init; } = [];

    /// <summary>How many units a supplier or shop gains when ordered or sent out earlier, for asking whether it would help.</summary>
    public int Sooner { get; init; } = 7 * 24 * 60;

    /// <summary>To be finished by then, in the project's time; null when nothing presses.</summary>
    public int? Date { get; init; }

    /// <summary>How sure the order-by dates are to be, above 0 and below 1.</summary>
    public double Confidence { get; init; } = 0.8;

    /// <summary>How many futures, 100 to 10 million.</summary>
    public int Futures { get; init; } = DefaultFutures;

    /// <summary>The same seed gives the same futures, on any machine and any number of threads.</summary>
    public ulong Seed { get; init; } = 1;
}

/// <summary>A window that a resource could have besides its own.</summary>
/// <param name="Says">In words: <c>an extra Saturday, 14 March</c>.</param>
/// <param name="Resource">Place of the resource in the project.</param>
public sealed record ExtraSpell(string Says, int Resource, Window Window);
