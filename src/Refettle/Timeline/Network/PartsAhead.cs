using NodaTime;

namespace Refettle.Timeline.Network;

/// <summary>How everything that the work takes stands: in hand, to come, or not ordered yet. Whoever keeps the shelf says so.</summary>
/// <param name="Places">Each place once. A place that is not among them takes nothing any more.</param>
/// <param name="Away">Parts of the car that are at an outside shop.</param>
/// <param name="Trials">What is to be held up to this car while it can still go back.</param>
public sealed record PartsAhead(ValueList<PlaceParts> Places, ValueList<AwayPart> Away, ValueList<PartTrial> Trials);

/// <summary>What goes onto a part or joint, or into a coat.</summary>
/// <param name="Thing"><c>part x</c>, <c>joint x</c> or <c>coat x</c>.</param>
/// <param name="Says">How it stands, in words: <c>2 × 77-105: 1 in hand, 1 to come</c>.</param>
/// <param name="IsWaitedFor">The work cannot be done without; false for spares of what may break.</param>
/// <param name="ToCome">What is not in hand comes with these; empty when all of it is there.</param>
public sealed record PlaceParts(string Thing, string Says, bool IsWaitedFor, ValueList<Consignment> ToCome);

/// <summary>A part of the car that left for a shop, and when it is counted on again.</summary>
public sealed record AwayPart(string Part, string Name, Consignment Work);

/// <summary>Things that come together, from a supplier or back from a shop.</summary>
/// <param name="Id">The same as long as it is the same order, or is still to be ordered the same way.</param>
/// <param name="Says">What it is and how its day came about, in words.</param>
/// <param name="From">Supplier or shop; null when none is known.</param>
/// <param name="On">The day it was ordered or sent out; null when that is still to be done.</param>
/// <param name="NamedDays">Days from then, as promised, named or by default.</param>
/// <param name="Days">Days that are counted on, which allow for how late the supplier is.</param>
/// <param name="Origin">Of the days.</param>
public sealed record Consignment(string Id, string Says, string? From, LocalDate? On, decimal NamedDays, decimal Days, Origin Origin);

/// <summary>Something that came and may still go back.</summary>
/// <param name="Id">The same as long as it is the same delivery.</param>
/// <param name="By">The last day that it is taken back.</param>
/// <param name="Parts">Parts of this car in whose place it may go, by identifier.</param>
public sealed record PartTrial(string Id, string Says, LocalDate By, ValueList<string> Parts);
