using Refettle.Access;

namespace Refettle.Discovery;

/// <summary>By what one outlook differs from another. Null is what was not worked out anew; what did not change is empty.</summary>
/// <param name="Suggested">Verdicts that count since the discovery without the owner's word.</param>
/// <param name="NotAnew">What was not worked out, each with the reason.</param>
public sealed record OutlookDifference(
    PlanChange? Plan, BasketChange? Basket, ScopeChange? Scope, ValueList<SuggestedVerdict> Suggested, ValueList<string> NotAnew)
{
    /// <summary>All was worked out, and nothing changes.</summary>
    public bool IsNothing =>
        NotAnew.Count == 0 && Plan is null or { IsNothing: true } && Basket is null or { IsNothing: true }
        && Scope is null or { IsNothing: true };

    public static OutlookDifference Between(
        Outlook before, Outlook after, ValueList<SuggestedVerdict> suggested, ValueList<string> notAnew) => new(
        before.Plan is { } plan && after.Plan is { } planned ? PlanChange.Between(plan, planned) : null,
        before.Basket is { } basket && after.Basket is { } filled ? BasketChange.Between(basket, filled) : null,
        before.Scope is { } scope && after.Scope is { } chosen ? ScopeChange.Between(scope, chosen) : null,
        suggested, notAnew);

    /// <summary>What the second has and the first has not; what is there twice counts twice.</summary>
    internal static ValueList<T> More<T>(IEnumerable<T> first, IEnumerable<T> second)
        where T : notnull
    {
        var left = first.GroupBy(one => one).ToDictionary(same => same.Key, same => same.Count());
        return second.Where(one => left.GetValueOrDefault(one) is not (> 0 and var count) || (left[one] = count - 1) < 0).ToValueList();
    }
}

/// <summary>A verdict that counts without the owner's word.</summary>
public sealed record SuggestedVerdict(string Part, VerdictKind Kind);

/// <summary>A change of the plan.</summary>
/// <param name="Status">How good the later plan is known to be.</param>
/// <param name="More">Steps that come in.</param>
/// <param name="Less">Steps that go.</param>
/// <param name="Work">Minutes of opening and closing, with a sign.</param>
/// <param name="Tries">Minutes of tries at stuck joints, with a sign.</param>
public sealed record PlanChange(
    PlanStatus Was, PlanStatus Status, ValueList<StepAhead> More, ValueList<StepAhead> Less, decimal Work, decimal Tries)
{
    public bool IsNothing => Was == Status && More.Count == 0 && Less.Count == 0 && Tries == 0;

    public static PlanChange Between(PlanAhead before, PlanAhead after)
    {
        var (more, less) = (OutlookDifference.More(before.Steps, after.Steps), OutlookDifference.More(after.Steps, before.Steps));
        return new(before.Status, after.Status, more, less, more.Sum(step => step.Minutes.Value) - less.Sum(step => step.Minutes.Value),
            after.Tries.Value - before.Tries.Value);
    }
}

/// <summary>A change of the basket: a place whose need changed is in both.</summary>
public sealed record BasketChange(ValueList<PieceAhead> More, ValueList<PieceAhead> Less)
{
    public bool IsNothing => More.Count == 0 && Less.Count == 0;

    public static BasketChange Between(BasketAhead before, BasketAhead after) =>
        new(OutlookDifference.More(before.Pieces, after.Pieces), OutlookDifference.More(after.Pieces, before.Pieces));
}

/// <summary>A change of what is worth doing; figures with a sign.</summary>
/// <param name="In">Jobs that come in.</param>
/// <param name="Out">Jobs that go.</param>
public sealed record ScopeChange(
    PlanStatus Was, PlanStatus Status, ValueList<string> In, ValueList<string> Out, decimal Time, decimal Money, decimal Gain)
{
    /// <summary>Nothing that it depends on changed.</summary>
    public static ScopeChange None { get; } = new(PlanStatus.Optimal, PlanStatus.Optimal, [], [], 0, 0, 0);

    public bool IsNothing => Was == Status && In.Count == 0 && Out.Count == 0 && Time == 0 && Money == 0 && Gain == 0;

    public static ScopeChange Between(ScopeAhead before, ScopeAhead after) => new(
        before.Status, after.Status, OutlookDifference.More(before.Jobs, after.Jobs), OutlookDifference.More(after.Jobs, before.Jobs),
        after.Time.Value - before.Time.Value, after.Money.Amount - before.Money.Amount, after.Gain - before.Gain);
}
