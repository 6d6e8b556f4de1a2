namespace Refettle;

/// <summary>What a supplier sells a part number for.</summary>
/// <param name="Each">Price of one, in the currency of the list.</param>
/// <param name="Minimum">The fewest that are sold at once, 1 or more.</param>
/// <param name="Multiple">Sold in packs of so many, 1 or more.</param>
/// <param name="LeadDays">Days that the supplier names; null when none are named.</param>
public sealed record Offer(string Number, string Name, Money? Each, int Minimum = 1, int Multiple = 1, int? LeadDays = null);

/// <summary>One line of an order.</summary>
/// <param name="Each">Price of one; null when not known.</param>
public sealed record OrderLine(string Number, int Count, Money? Each = null, PieceCondition Condition = PieceCondition.New);

/// <summary>What arrived for a line of an order.</summary>
/// <param name="Ordered">The number that was ordered; the batch may carry the one that superseded it.</param>
public sealed record ArrivedLine(string Ordered, Batch Batch, int Count);

/// <summary>One line of what is given to an outside shop.</summary>
/// <param name="What">In words, or <c>part x</c> of the car.</param>
/// <param name="Batch">The pieces, when they come from the shelf; null for a part of the car itself.</param>
/// <param name="Photos">References to photos of it.</param>
public sealed record SentItem(string What, int Count, Batch? Batch, ValueList<string> Photos);

/// <summary>One line of what came back.</summary>
/// <param name="What">As it was sent.</param>
/// <param name="As">What the pieces are now, when they go onto the shelf; null for a part of the car.</param>
/// <param name="Condition">What the check on return found, in words.</param>
/// <param name="Good">Whether it can be used as it is.</param>
public sealed record BackItem(string What, int Count, Batch? As, string Condition, bool Good);
