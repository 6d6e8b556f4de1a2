namespace Refettle.Stock.Baskets;

/// <summary>Everything that the plans of all cars use up: what serves it, and what has to be bought by when.</summary>
/// <param name="Lines">Every need, with the pieces given to it.</param>
/// <param name="Purchases">What to order, the most pressing first.</param>
/// <param name="Unnumbered">Needs without a part number, to be ordered by their words.</param>
/// <param name="MadeUp">Pieces to make up at home; what they take is among the needs.</param>
/// <param name="Confidence">Promises are counted on for the day that they keep with this probability.</param>
public sealed record Basket(
    ValueList<Served> Lines, ValueList<Purchase> Purchases, ValueList<Need> Unnumbered, ValueList<NumberCount> MadeUp, double Confidence)
{
    /// <summary>Four promises in five are kept by the day that is counted on.</summary>
    public const double UsualConfidence = 0.8;

    /// <summary>What the purchases cost, where prices are known, each currency by itself.</summary>
    public ValueList<CurrencyCost> Costs =>
        Purchases.Where(purchase => purchase.Cost is { Amount: > 0 }).GroupBy(purchase => purchase.Currency!)
            .OrderBy(group => group.Key, StringComparer.Ordinal)
        .Select(group => new CurrencyCost(group.Key, new(group.Sum(purchase => purchase.Cost!.Value.Amount)))).ToValueList();
}

/// <summary>Money in a currency.</summary>
/// <param name="Currency">ISO 4217 code.</param>
public sealed record CurrencyCost(string Currency, Money Cost)
{
    public override string ToString() => $"{Cost} {Currency}";
}

/// <summary>Something to order.</summary>
/// <param name="Number">The number to order it by; the one that is current.</param>
/// <param name="Needed">Pieces that are missing.</param>
/// <param name="Count">Pieces to order: more than needed where fewer are not sold.</param>
/// <param name="Supplier">Null when no supplier's list has it.</param>
/// <param name="Cost">For all of them; null when no price is known.</param>
/// <param name="NeededBy">The first day that misses some; null when no day is known.</param>
/// <param name="OrderBy">The last day to order that keeps it, with the confidence asked for; null when no day is known.</param>
/// <param name="DaysTooLate">Days by which that day is past.</param>
/// <param name="Says">How the order-by day came about.</param>
/// <param name="For">The places they are for.</param>
/// <param name="Contents">What a kit covers of the needs; empty for a single part.</param>
public sealed record Purchase(
    string Number, string Name, int Needed, int Count, string? Supplier, string? Currency, Money? Cost, DateOnly? NeededBy,
    DateOnly? OrderBy, int DaysTooLate, string Says,
    ValueList<string> For, ValueList<NumberCount> Contents)
{
    /// <summary>Days from ordering to having, as the supplier names them, or by default.</summary>
    public int NamedDays { get; init; }

    /// <summary>Days that are counted on, with the confidence asked for.</summary>
    public int Days { get; init; }

    /// <summary>Of the days.</summary>
    public Origin Origin { get; init; }

    /// <summary>It is, with others, for this place of a car.</summary>
    public bool IsFor(string car, string thing) => For.Contains($"{car} {thing}");
}
