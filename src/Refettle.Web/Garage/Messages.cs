namespace Refettle.Web.Garage;

/// <summary>One car of the garage, as the server lists it.</summary>
/// <param name="Entries">How many entries its logbook has.</param>
public sealed record CarLine(string Id, string Name, int Entries);

/// <summary>Entries of a logbook in the order in which the server came to have them.</summary>
/// <param name="Next">Where the next page begins.</param>
/// <param name="Total">How many entries the server has for this car.</param>
public sealed record EntryPage(ValueList<Entry> Entries, int Next, int Total);

/// <summary>What the server kept of the entries it was sent; sending an entry again does no harm.</summary>
/// <param name="Kept">How many of them were new.</param>
/// <param name="Total">How many entries the server has for this car now.</param>
public sealed record EntriesKept(int Kept, int Total);

/// <summary>Two sets of goals to put beside each other.</summary>
public sealed record Pair(ValueList<Fact> First, ValueList<Fact> Second);

/// <summary>What the server says when it cannot do what it was asked (RFC 9457).</summary>
public sealed record Problem(string? Title, string? Detail, ValueList<Fault>? Faults);
