using Refettle.Access;

namespace Refettle.Discovery;

/// <summary>What lies ahead of a car: what comes off, what is used up, which jobs are worth doing.
/// Null is what was not worked out.</summary>
public sealed record Outlook(PlanAhead? Plan, BasketAhead? Basket, ScopeAhead? Scope);

/// <summary>The plan for what is to be done.</summary>
/// <param name="Steps">Its steps; their order is the plan's own affair.</param>
/// <param name="Tries">Minutes to expect at joints that are taken to be stuck, beyond what their steps say.</param>
public sealed record PlanAhead(PlanStatus Status, ValueList<StepAhead> Steps, Minutes Tries)
{
    /// <summary>Opening, closing again and tries.</summary>
    public Minutes Total => new(Steps.Sum(step => step.Minutes.Value) + Tries.Value);
}

/// <summary>One step of the plan.</summary>
/// <param name="Minutes">To open and to close again.</param>
public sealed record StepAhead(Fact Fact, string Way, Minutes Minutes);

/// <summary>What the plan uses up.</summary>
public sealed record BasketAhead(ValueList<PieceAhead> Pieces);

/// <summary>Pieces that one place needs.</summary>
/// <param name="Thing"><c>part x</c> or <c>joint x</c>.</param>
/// <param name="Missing">Of those, how many are neither on the shelf nor ordered.</param>
/// <param name="OrderBy">The last day to order them; null when nothing is missing or no day to meet is known.</param>
public sealed record PieceAhead(string Thing, string What, int Count, int Missing, DateOnly? OrderBy);

/// <summary>The jobs worth doing.</summary>
public sealed record ScopeAhead(PlanStatus Status, ValueList<string> Jobs, Minutes Time, Money Money, decimal Gain);
