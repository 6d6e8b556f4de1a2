using Refettle.Access;
using Refettle.Kits;
using Refettle.Timeline;
using Refettle.Timeline.Network;

namespace Refettle.Web.Garage;

/// <summary>Entries of a logbook in the order in which the server came to have them.</summary>
/// <param name="Last">The position of the newest of all the server's entries about this car: ask next time for what came after it.</param>
public sealed record EntryPage(ValueList<Entry> Entries, long Last);

/// <summary>What the server did with the entries it was sent; sending one again does no harm.</summary>
/// <param name="New">How many of them it did not have yet. It has all of them now.</param>
public sealed record EntriesKept(int New);

/// <summary>How much of a picture the server has.</summary>
/// <param name="Received">Bytes.</param>
/// <param name="Kept">It has all of it, on its disk.</param>
public sealed record PhotoArrived(long Received, bool Kept);

/// <summary>What cars are made of.</summary>
/// <param name="Start">What every car begins with.</param>
public sealed record KitTable(Structure Start, ValueList<Kit> Kits);

/// <summary>Two sets of goals to put beside each other.</summary>
public sealed record Pair(ValueList<Fact> First, ValueList<Fact> Second);

/// <summary>What the server says when it cannot do what it was asked (RFC 9457).</summary>
public sealed record Problem(string? Title, string? Detail, ValueList<Fault>? Faults);

/// <summary>A question about time.</summary>
/// <param name="Goals">Beside those of the chosen jobs.</param>
/// <param name="Seconds">To look for a better order; 0 for the first one.</param>
public sealed record TimelineAsked(ValueList<Fact> Goals, double Seconds);

/// <summary>A timeline, with what it was made from, so that a page can try changes on it.</summary>
public sealed record TimelineShown(Plan Plan, TaskNetwork Network, TimelineAnswer Answer);

/// <summary>A question about how sure the finish is.</summary>
/// <param name="Goals">Beside those of the chosen jobs.</param>
/// <param name="Confidence">How sure order days are to be, above 0 and below 1.</param>
public sealed record ForecastAsked(ValueList<Fact> Goals, double Confidence);
