namespace Refettle.Stuck;

/// <summary>Which try a stuck joint should get next.</summary>
public sealed record NextTryQuestion
{
    /// <summary>The ladders by the condition of the joint; each ends with a sure rung.</summary>
    public required IReadOnlyDictionary<JointCondition, Ladder> Ladders { get; init; }

    public JointCondition Condition { get; init; }

    /// <summary>The chances of the seizure levels 0 to 4 now.</summary>
    public required double[] Belief { get; init; }

    /// <summary>Rungs already tried in vain, each at most once more in this plan; they are not tried again.</summary>
    public ValueList<string> Tried { get; init; } = [];

    public bool IsSoaked { get; init; }

    /// <summary>Minutes that clearing the way for a rung takes first (its gate, or its reach);
    /// rungs that are not named take none.</summary>
    public IReadOnlyDictionary<string, Minutes> ClearingFirst { get; init; } = new Dictionary<string, Minutes>();

    /// <summary>Rungs that are out of the question.</summary>
    public ValueList<string> Forbidden { get; init; } = [];

    /// <summary>What an hour of work is worth; turns what is destroyed into minutes.</summary>
    public Money PerHour { get; init; } = new(30);

    /// <summary>What an hour of waiting costs in minutes of work: 0 while there is other work to do.</summary>
    public double WaitingHourInMinutes { get; init; }
}

/// <summary>The best next try and what it is chosen over.</summary>
/// <param name="Best">The rung to try next.</param>
/// <param name="ExpectedMinutes">Expected minutes until the joint is free, damage included, when the best is done at every turn.</param>
/// <param name="Options">Every admissible rung as the next, cheapest first.</param>
/// <param name="IfHeld">The rungs in the order in which the best policy tries them while each one holds.</param>
public sealed record NextTryAnswer(Rung Best, double ExpectedMinutes, ValueList<TryOption> Options, ValueList<string> IfHeld);

/// <summary>A rung as the next try.</summary>
/// <param name="ExpectedMinutes">Expected minutes in all when this is next and the best follows.</param>
/// <param name="Frees">The chance that it frees the joint.</param>
/// <param name="Harms">The chance that it makes things worse.</param>
public sealed record TryOption(Rung Rung, double ExpectedMinutes, double Frees, double Harms);
