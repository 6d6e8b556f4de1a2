namespace Refettle.Stock.Baskets;

/// <summary>Pieces that can serve a need.</summary>
/// <param name="From">The day they are here; on the shelf that is today.</param>
/// <param name="Until">The last day they may be fitted; null when they do not age.</param>
/// <param name="Order">The order they come with; null when they are on the shelf.</param>
/// <param name="Kit">The unopened kit they are in; null when they are loose.</param>
/// <param name="For">The only place they are for, where they are kept for one.</param>
public sealed record Supply(
    string Number, PieceCondition Condition, int Count, DateOnly From, DateOnly? Until, Guid? Order, string? Kit,
    (string Car, string Thing)? For);

/// <summary>Pieces given to a need.</summary>
/// <param name="Caveat">What is different, where a substitute serves; else empty.</param>
/// <param name="DaysLate">Days after the need that they come; 0 when in time.</param>
public sealed record Given(Supply Supply, int Count, string Caveat, int DaysLate);

/// <summary>A need with what serves it.</summary>
/// <param name="Missing">Pieces that nothing serves: to be bought or made.</param>
public sealed record Served(Need Need, ValueList<Given> Given, int Missing)
{
    /// <summary>All of it is on the shelf.</summary>
    public bool InHand => Missing == 0 && Given.All(given => given.Supply.Order is null);
}
