namespace Refettle;

/// <summary>An observed condition of a part, joint or space.</summary>
public sealed record Finding
{
    /// <summary><c>part x</c>, <c>joint x</c> or <c>space x</c>.</summary>
    public required string Of { get; init; }

    /// <summary>The scale that the word is from (<see cref="ConditionScales"/>).</summary>
    public required string Scale { get; init; }

    /// <summary>A word of the scale; null when something was only measured.</summary>
    public string? Word { get; init; }

    public MeasuredValue? Reading { get; init; }

    /// <summary>Pictures, by the hash of their bytes.</summary>
    public ValueList<string> Photos { get; init; } = [];

    public string? Note { get; init; }
}

/// <summary>What was measured, once or again and again.</summary>
/// <param name="What">What it is of: <c>axial play</c>.</param>
/// <param name="Values">One or more, in the unit.</param>
/// <param name="Unit">A unit that the bench numbers know.</param>
/// <param name="Instrument">With what; null when not said.</param>
/// <param name="Resolution">The smallest step that the instrument shows, in the unit; null when not said.</param>
public sealed record MeasuredValue(string What, ValueList<decimal> Values, string Unit, string? Instrument, decimal? Resolution)
{
    public decimal Mean => Values.Average();

    public override string ToString() => $"{What} {Mean:0.####} {Unit}{(Values.Count > 1 ? $" (mean of {Values.Count})" : "")}";
}

/// <summary>What a measured value may be at most, at least, or both.</summary>
/// <param name="Of"><c>part x</c>, <c>joint x</c> or <c>space x</c>.</param>
/// <param name="What">What is measured.</param>
/// <param name="Source">Where it stands: a page of the manual, a drawing.</param>
public sealed record Limit(string Of, string What, decimal? Lower, decimal? Upper, string Unit, Origin Origin, string? Source)
{
    public override string ToString() => (Lower, Upper) switch
    {
        ({ } lower, { } upper) => $"{What} {lower:0.####} to {upper:0.####} {Unit}",
        ({ } lower, _) => $"{What} {lower:0.####} {Unit} or more",
        _ => $"{What} {Upper:0.####} {Unit} or less",
    };
}

/// <summary>What will be done with a part.</summary>
public enum VerdictKind
{
    Keep,
    Refurbish,
    Replace,
    Substitute,
}

/// <summary>Who does it.</summary>
public enum DoneBy
{
    Self,
    OutsideShop,
}

/// <summary>The owner's own word on a part.</summary>
public sealed record Verdict(string Part, VerdictKind Kind, DoneBy By, string? Why);

/// <summary>What the owner knows of getting a part again or putting it right; what is null is not known.</summary>
/// <param name="Work">Own time to refurbish it on the bench.</param>
/// <param name="Material">Money for that.</param>
/// <param name="OutsidePrice">What an outside shop takes to refurbish it.</param>
/// <param name="OutsideDays">Days until it is back.</param>
/// <param name="Price">Of another one; null takes the part's own.</param>
/// <param name="LeadDays">Days until another one is here.</param>
/// <param name="SubstitutePrice">Of something else that does instead.</param>
/// <param name="SubstituteWork">Own time to make that fit.</param>
/// <param name="SoldWith">The part or sub-assembly that it is only sold with; the price is that one's.</param>
public sealed record PartEstimate(
    string Part, Minutes? Work, Money? Material, Money? OutsidePrice, decimal? OutsideDays, Money? Price, decimal? LeadDays,
    Money? SubstitutePrice, Minutes? SubstituteWork, string? SoldWith);

/// <summary>Something told of the car as it came, before the first bolt.</summary>
/// <param name="Item">Which of the things that are asked (<see cref="BaselineItems"/>).</param>
/// <param name="Says">What was found; null when it does not apply or was not done.</param>
/// <param name="WhyNot">Why it was left out; null when it was done.</param>
public sealed record BaselineAnswer(string Item, string? Says, string? WhyNot, ValueList<string> Photos);
