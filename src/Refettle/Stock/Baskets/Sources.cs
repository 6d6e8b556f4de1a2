using Refettle.Stock.Netting;

namespace Refettle.Stock.Baskets;

/// <summary>A supplier's offer of a number.</summary>
internal sealed record Source(string Supplier, string Currency, Offer Offer);

/// <summary>Who sells what, for a car that counts in one currency. A price in another says nothing against one in this: it is
/// listed, and counts as not known.</summary>
internal sealed class Sources(Shelf shelf, string currency)
{
    /// <summary>Those in the car's currency go before those in others, of which each is only compared with its like.</summary>
    public Source? Cheapest(string number, int count) => shelf.Lists
        .SelectMany(list => list.Offers.Where(offer => offer.Number == number)
            .Select(offer => new Source(list.Supplier, list.Currency, offer)))
        .OrderBy(source => source.Currency == currency ? 0 : 1).ThenBy(source => source.Currency, StringComparer.Ordinal)
        .ThenBy(source => source.Offer.Each is { } each ? each.Amount * Lot(source).Size(count) : decimal.MaxValue)
        .ThenBy(source => source.Offer.LeadDays ?? int.MaxValue).ThenBy(source => source.Supplier, StringComparer.Ordinal).FirstOrDefault();

    /// <summary>What so many cost in the car's currency; null when not known.</summary>
    public Money? Price(string number, int count) =>
        Cheapest(number, count) is { Offer.Each: { } each } source && source.Currency == currency
        ? new Money(each.Amount * Lot(source).Size(count)) : null;

    /// <summary>Why a source was not chosen by its price; empty where it was.</summary>
    public string Apart(Source? source) => source is { Offer.Each: not null } && source.Currency != currency
        ? $"; priced in {source.Currency}, so not compared with prices in {currency}" : "";

    public static LotRule Lot(Source? source) => source is null ? LotRule.LotForLot : new(source.Offer.Minimum, source.Offer.Multiple);
}
