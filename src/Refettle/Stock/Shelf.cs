using Refettle.Logbook;

namespace Refettle.Stock;

/// <summary>The stock of all cars together, as their logs tell it.</summary>
public sealed record Shelf
{
    public static Shelf Empty { get; } = new();

    /// <summary>How many pieces are at each place; places that came out even are left out.</summary>
    public ValueList<Account> Accounts { get; init; } = [];

    /// <summary>The pieces on the shelf, those to be used first at the front of each number.</summary>
    public ValueList<Holding> Holdings { get; init; } = [];

    /// <summary>Pieces kept for a position and not fitted there yet.</summary>
    public ValueList<Claim> Claims { get; init; } = [];

    /// <summary>All part numbers that were described.</summary>
    public ValueList<PartNumber> Numbers { get; init; } = [];

    /// <summary>The newest list of each supplier.</summary>
    public ValueList<SupplierList> Lists { get; init; } = [];

    public ValueList<Order> Orders { get; init; } = [];

    public ValueList<OutsideWork> Outside { get; init; } = [];

    /// <summary>What was held up to a car while it could still go back.</summary>
    public ValueList<TrialFitted> Tried { get; init; } = [];

    /// <summary>Parts taken from one car for another and not made good yet.</summary>
    public ValueList<Debt> Debts { get; init; } = [];

    /// <summary>What does not add up: fewer than none on the shelf, arrivals of orders that are not there …</summary>
    public ValueList<Fault> Faults { get; init; } = [];

    public int OnHand(string number) => Holdings.Where(holding => holding.Batch.Number == number).Sum(holding => holding.Count);

    public PartNumber? Number(string number) => Numbers.FirstOrDefault(known => known.Id == number);

    public string NameOf(string number) => Number(number) is { Name.Length: > 0 } known
        ? known.Name
        : Lists.SelectMany(list => list.Offers).FirstOrDefault(offer => offer.Number == number && offer.Name.Length > 0)?.Name ?? "";
}

/// <summary>So many pieces of a batch at a place. Below 0 where pieces left a place that no entry brought them to.</summary>
public sealed record Account(Batch Batch, StockPlace Place, int Count);

/// <summary>Pieces of a batch on the shelf.</summary>
/// <param name="Count">Below 0 when more were taken than were there: someone must count.</param>
public sealed record Holding(Batch Batch, int Count);

/// <summary>Pieces that are kept for a position.</summary>
/// <param name="Count">Those not fitted there yet.</param>
/// <param name="Entries">The entries that reserved them; striking one frees its pieces.</param>
public sealed record Claim(string Car, string Thing, string Number, int Count, ValueList<Guid> Entries);

/// <summary>A supplier's list of prices.</summary>
public sealed record SupplierList(string Supplier, string Currency, DateOnly On, ValueList<Offer> Offers);

/// <summary>A part that one car gave to another.</summary>
/// <param name="Car">The car that gave.</param>
/// <param name="To">The car that got it.</param>
public sealed record Debt(string Car, string Thing, string To, string Number, int Count);
