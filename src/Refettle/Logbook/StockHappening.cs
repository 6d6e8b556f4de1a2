namespace Refettle.Logbook;

/// <summary>What an entry tells about parts in stock. The shelf is one for all cars: it is folded from all their logs together.</summary>
public abstract record StockHappening : Happening;

/// <summary>What is known of a part number. <c>number-described</c></summary>
/// <param name="Instead">The entries of this kind that the writer knew and replaces, in any car's log:
/// no clock decides which is newer.</param>
public sealed record NumberDescribed(PartNumber Number, ValueList<Guid> Instead) : StockHappening;

/// <summary>Which part number a part or joint takes; null takes the number away. <c>number-assigned</c></summary>
public sealed record NumberAssigned(string Thing, string? Number, int Count) : StockHappening;

/// <summary>Pieces went from one place to another. <c>pieces-moved</c></summary>
/// <param name="Why">In words; null when it speaks for itself.</param>
public sealed record PiecesMoved(Batch Batch, int Count, StockPlace From, StockPlace To, DateOnly? On, string? Why) : StockHappening;

/// <summary>Kits were opened and their contents put on the shelf. <c>kit-opened</c></summary>
/// <param name="Contents">What came out of all of them together; what a kit did not hold is simply not here.</param>
public sealed record KitOpened(Batch Kit, int Count, ValueList<ArrivedLine> Contents) : StockHappening;

/// <summary>Pieces were made up from others on the shelf. <c>made-up</c></summary>
public sealed record MadeUp(Batch Made, int Count, ValueList<ArrivedLine> Taken) : StockHappening;

/// <summary>Pieces are kept for a part or joint of this car. <c>reserved</c></summary>
public sealed record Reserved(string Thing, string Number, int Count) : StockHappening;

/// <summary>New pieces are wanted for a part or joint of this car, whatever its plan uses up; replaces what was wanted
/// there before. <c>pieces-wanted</c></summary>
/// <param name="Count">0 when none are wanted any more.</param>
public sealed record PiecesWanted(string Thing, int Count) : StockHappening;

/// <summary>An order was placed. <c>ordered</c></summary>
/// <param name="Promised">When the supplier promised it; null when not.</param>
/// <param name="ReturnDays">Days after arrival within which it may go back; null when not said.</param>
/// <param name="Carriage">What the delivery costs.</param>
public sealed record Ordered(
    string Supplier, ValueList<OrderLine> Lines, DateOnly On, DateOnly? Promised, int? ReturnDays, Money? Carriage) : StockHappening;

/// <summary>The supplier named another day. <c>order-promised</c></summary>
public sealed record OrderPromised(Guid Order, DateOnly Promised) : StockHappening;

/// <summary>All or part of what has not come yet is cancelled. <c>order-cancelled</c></summary>
public sealed record OrderCancelled(Guid Order, ValueList<NumberCount> Lines) : StockHappening;

/// <summary>All or part of an order came. <c>arrived</c></summary>
public sealed record Arrived(Guid Order, ValueList<ArrivedLine> Lines, DateOnly On) : StockHappening;

/// <summary>Pieces went back to the supplier. <c>sent-back</c></summary>
public sealed record SentBack(Guid Order, ValueList<ArrivedLine> Lines, DateOnly On, string? Why) : StockHappening;

/// <summary>A supplier's list: replaces that supplier's older ones. <c>offers-listed</c></summary>
/// <param name="Currency">ISO 4217 code of the prices.</param>
public sealed record OffersListed(string Supplier, string Currency, ValueList<Offer> Offers, DateOnly On) : StockHappening;

/// <summary>Things left for an outside shop. <c>sent-out</c></summary>
/// <param name="Work">What is to be done to them.</param>
public sealed record SentOut(
    string To, string Work, ValueList<SentItem> Items, DateOnly On, DateOnly? Promised, Money? Price) : StockHappening;

/// <summary>Things came back from an outside shop and were checked. <c>came-back</c></summary>
public sealed record CameBack(Guid Sent, ValueList<BackItem> Items, DateOnly On) : StockHappening;

/// <summary>Pieces of an order were held up to the car before their return deadline. <c>trial-fitted</c></summary>
/// <param name="Fits">Whether they fit.</param>
/// <param name="Says">What was seen, in words; null when nothing was said.</param>
public sealed record TrialFitted(Guid Order, string Number, int Count, bool Fits, string? Says, DateOnly On) : StockHappening;
