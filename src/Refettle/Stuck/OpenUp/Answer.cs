namespace Refettle.Stuck.OpenUp;

/// <summary>What to open before the tries begin, and what that is chosen over.</summary>
public sealed record OpenUpAnswer
{
    /// <summary>What to open now; nothing when the tries come first.</summary>
    public required Choice Best { get; init; }

    /// <summary>Opening nothing yet.</summary>
    public required Choice TryFirst { get; init; }

    /// <summary>The best that opens something now.</summary>
    public required Choice OpenNow { get; init; }

    /// <summary>Every set that was weighed, cheapest first.</summary>
    public ValueList<Choice> Choices { get; init; } = [];

    /// <summary>When the tries come first: the chance that something has to be opened after all.</summary>
    public double OpensLater { get; init; }

    /// <summary>The chance to be sorry: tried first and had to open after all, or opened and it would all have come free without.</summary>
    public double Regret => Best.Open.Count == 0 ? OpensLater : 1 - OpensLater;

    /// <summary>The chance of having to open after all at which both are equally good: trying first pays below it.
    /// Null when one of them is better whatever that chance is.</summary>
    public double? BreakEven { get; init; }

    /// <summary>Tries of which one outcome would change what to open now, the most telling first.</summary>
    public ValueList<Turning> Turnings { get; init; } = [];

    /// <summary>What each joint gets before more is opened than <see cref="Best"/> opens.</summary>
    public ValueList<TriedFirst> Joints { get; init; } = [];
}

/// <summary>A set of accesses to open now.</summary>
/// <param name="Open">Their identifiers.</param>
/// <param name="ExpectedMinutes">Expected minutes until every joint is free and all is closed again, damage included.</param>
/// <param name="Uncertainty">Half the width of the 95 % confidence interval of a sampled figure; 0 when it is exact.</param>
public sealed record Choice(ValueList<string> Open, double ExpectedMinutes, double Uncertainty);

/// <summary>A try whose outcome would change what to open now.</summary>
/// <param name="Frees">The chance that the try frees the joint.</param>
/// <param name="IfFreed">What to open now if it does.</param>
/// <param name="IfHeld">What to open now if it holds.</param>
/// <param name="Saves">Expected minutes that knowing it saves.</param>
public sealed record Turning(string Joint, Rung Rung, double Frees, ValueList<string> IfFreed, ValueList<string> IfHeld, double Saves);

/// <summary>The tries that a joint gets first.</summary>
/// <param name="Tries">In their order; none when the joint waits, or is done to the end with what is open.</param>
/// <param name="WaitsForMore">Whether more would be opened for it if they fail.</param>
public sealed record TriedFirst(string Joint, ValueList<string> Tries, bool WaitsForMore);
