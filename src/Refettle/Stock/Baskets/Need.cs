namespace Refettle.Stock.Baskets;

/// <summary>Why something is needed.</summary>
public enum NeedReason
{
    /// <summary>A way destroys it.</summary>
    Destroyed,

    /// <summary>A single-use fastener of a joint that is opened.</summary>
    SingleUse,

    /// <summary>A seal or bond that is not fitted twice.</summary>
    Seal,

    /// <summary>Likely to break: spares by what a missing one and one too many cost.</summary>
    MayBreak,

    /// <summary>The owner's verdict, or a reservation.</summary>
    Asked,

    /// <summary>Paint of a coat.</summary>
    Coat,

    /// <summary>Goes into a piece that is made up at home.</summary>
    MakeUp,
}

/// <summary>Pieces that a car needs at a place.</summary>
/// <param name="Thing"><c>part x</c> or <c>joint x</c>.</param>
/// <param name="Number">Its part number; null while none is known: then <paramref name="What"/> is all there is to order by.</param>
/// <param name="What">In words: name, thread, grade.</param>
/// <param name="By">The day it must be in hand; null when no day is known.</param>
/// <param name="Each">The price of one by the car's description; null when not known.</param>
/// <param name="Says">How the count came about, in words, with its origin.</param>
public sealed record Need(
    string Car, string Thing, string? Number, string What, int Count, DateOnly? By, NeedReason Reason, Money? Each, string Says)
{
    /// <summary>Days until another one is here, as the owner estimates; null when he does not.</summary>
    public int? LeadDays { get; init; }

    /// <summary>The car's: what is priced in another is not compared with what is priced in this one.</summary>
    public string Currency { get; init; } = "EUR";
}
