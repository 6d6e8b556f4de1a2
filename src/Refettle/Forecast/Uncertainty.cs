namespace Refettle.Forecast;

/// <summary>How unsure the duration of an activity is, in the project's unit of time (minutes, for a car).</summary>
public abstract record Uncertainty
{
    /// <summary>Where the figures come from.</summary>
    public Origin Origin { get; init; } = Origin.Default;
}

/// <summary>Nothing unsure: the activity's own duration.</summary>
public sealed record Certain : Uncertainty;

/// <summary>The form of a three-point estimate.</summary>
public enum ThreePointForm
{
    /// <summary>The PERT form of the beta distribution: shapes 1 + 4 (m − a)/(b − a) and 1 + 4 (b − m)/(b − a).</summary>
    Beta,

    /// <summary>A triangle, which leaves more to the ends.</summary>
    Triangle,
}

/// <summary>At least, likeliest, at most; 0 ≤ least ≤ likely ≤ most.</summary>
public sealed record ThreePoint(double Least, double Likely, double Most, ThreePointForm Form = ThreePointForm.Beta) : Uncertainty;

/// <summary>May run long: log-normal.</summary>
/// <param name="Median">Half take less; more than 0.</param>
/// <param name="Sigma">Deviation of the logarithm, 0 or more.</param>
public sealed record LongTail(double Median, double Sigma) : Uncertainty;

/// <summary>Work by the user: the planned time × his own overrun, learned from what he timed (<see cref="OverrunBelief"/>).</summary>
public sealed record OwnPace(double Planned) : Uncertainty;

/// <summary>Somebody else's promise: the promised time × a log-normal lateness.</summary>
/// <param name="Promised">Time promised, more than 0.</param>
public sealed record Promise(double Promised, Lateness Lateness) : Uncertainty;

/// <summary>How late suppliers and shops are, as a factor on the promised time.</summary>
/// <param name="Factor">Half are earlier than this times the promise; more than 0.</param>
/// <param name="Sigma">Deviation of the logarithm, 0 or more.</param>
public sealed record Lateness(double Factor, double Sigma)
{
    /// <summary>Of a parcel: half come a tenth late, one in twenty takes twice the time. Common practice, no source.</summary>
    public static Lateness OfDeliveries { get; } = new(1.1, 0.36);

    /// <summary>Of an outside shop: half take a third more, one in twenty takes three times as long. Common practice, no source.</summary>
    public static Lateness OfShops { get; } = new(1.33, 0.5);
}

/// <summary>Depends on a hidden level that other activities share, as tries at rusted joints do: one
/// list of outcomes for each level.</summary>
/// <param name="Level">Identifier of a <see cref="HiddenLevel"/>.</param>
public sealed record ByLevel(string Level, ValueList<ValueList<DurationChance>> Outcomes) : Uncertainty;

/// <summary>A duration with its chance; the chances of a list add up to 1.</summary>
public readonly record struct DurationChance(double Duration, double Chance);

/// <summary>Happens with a chance, as rust behind a panel does; else it takes no time.</summary>
/// <param name="Chance">0 to 1.</param>
public sealed record Perhaps(double Chance, Uncertainty When) : Uncertainty;

/// <summary>What another says, times a factor, less an amount, but not below 0: for asking what would help.</summary>
internal sealed record Eased(Uncertainty Of, double Factor, double Less) : Uncertainty;

/// <summary>Any distribution, by its quantile function on 0 to 1.</summary>
internal sealed record AnyCurve(Func<double, double> Quantile) : Uncertainty;

/// <summary>A level that is the same for all that depends on it in one future: the grade of the car, the rust of a zone.</summary>
/// <param name="Parent">Identifier of the level that this one follows; null when it stands alone.
/// Parents come before their children.</param>
/// <param name="Chances">For each level of the parent (one row when there is none) the chances of the levels of this one.</param>
public sealed record HiddenLevel(string Id, string? Parent, ValueList<ValueList<double>> Chances);

/// <summary>The windows of a resource do not all come about: an evening is lost to something else.</summary>
/// <param name="Resource">Place of the resource in the project.</param>
/// <param name="Chance">The chance that a window is lost, each by itself; 0 to 1.</param>
public sealed record MissedSpells(int Resource, double Chance, Origin Origin);
