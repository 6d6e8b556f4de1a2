using Refettle.Access;
using Refettle.Kits;

namespace Refettle.Discovery;

/// <summary>Asks what else is worth doing once a car is opened up.</summary>
public sealed record SinceOpenQuestion
{
    public required Car Car { get; init; }

    /// <summary>What will be opened, one fact or more; all of the car, without faults.</summary>
    public required ValueList<Fact> Goals { get; init; }

    /// <summary>Kits that may tell what is worth doing while they are open.</summary>
    public ValueList<Kit> Kits { get; init; } = [];

    /// <summary>At most so many offers, 1 or more.</summary>
    public int Most { get; init; } = 12;
}

/// <summary>What else is worth doing.</summary>
/// <param name="Plan">The least plan for what will be opened anyway.</param>
/// <param name="Offers">Those first by which most time is saved.</param>
/// <param name="Open">Things that were not priced because the search was ended.</param>
public sealed record SinceOpenAnswer(Plan Plan, ValueList<Offer> Offers, int Open)
{
    /// <summary>How far the figures may be trusted, and what was not priced.</summary>
    public string Told() =>
        Offers.Count == 0 ? Open == 0 ? "Nothing is spared by doing more now." : $"Nothing found yet: {Open} were not priced in the time."
        : $"{(Offers.All(offer => offer.Proven) ? "Both figures are the least there is." : "Both figures are the least there is, but for those not proven.")}{(Open == 0 ? "" : $" {Open} more were not priced in the time.")}";
}

/// <summary>Who speaks for an offer.</summary>
public enum OfferSource
{
    /// <summary>A job that is thought of and not chosen.</summary>
    Job,

    /// <summary>What was found of the part.</summary>
    Finding,

    /// <summary>A kit of the car; common practice.</summary>
    Kit,

    /// <summary>It comes within reach, no more.</summary>
    Reach,
}

/// <summary>Something to do since it is open.</summary>
/// <param name="Job">As it would be entered: a maybe.</param>
/// <param name="Now">Least cost of what is opened and this together, less the least cost of what is opened: figures
/// may be negative, their sum is not.</param>
/// <param name="Later">Least cost of this by itself, from the car as it stands.</param>
/// <param name="Proven">Both are the least.</param>
public sealed record Offer(Job Job, OfferSource Source, Cost Now, Cost Later, bool Proven)
{
    /// <summary>What doing it now spares.</summary>
    public Minutes Spares => Later.Total - Now.Total;
}
