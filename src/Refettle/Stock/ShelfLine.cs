namespace Refettle.Stock;

/// <summary>One part number as the shelf shows it.</summary>
/// <param name="OnHand">Pieces that can be fitted, by condition; what is too old is not among them.</param>
/// <param name="TooOld">Pieces that are past their last day.</param>
/// <param name="Kept">Pieces kept for positions.</param>
/// <param name="Free">Pieces on hand that nothing is kept for.</param>
/// <param name="ToCome">Pieces ordered and not here yet.</param>
/// <param name="Away">Pieces at outside shops.</param>
/// <param name="FirstUseBy">The nearest last day among pieces on hand; null when none ages.</param>
public sealed record ShelfLine(
    string Number, string Name, ValueList<ConditionCount> OnHand, int TooOld, int Kept, int Free, int ToCome, int Away,
    DateOnly? FirstUseBy, ValueList<Claim> Claims)
{
    /// <summary>Every number that is described, on the shelf, kept, or to come.</summary>
    /// <param name="on">The day that decides what is too old.</param>
    public static ValueList<ShelfLine> All(Shelf shelf, DateOnly on)
    {
        var numbers = shelf.Numbers.Select(number => number.Id)
            .Concat(shelf.Accounts.Select(account => account.Batch.Number))
            .Concat(shelf.Claims.Select(claim => claim.Number))
            .Concat(shelf.Orders.SelectMany(order => order.Lines).Select(line => line.Line.Number));
        return numbers.Distinct().Order(StringComparer.Ordinal).Select(number => Of(shelf, number, on)).ToValueList();
    }

    /// <summary>One number, known from the shelf or from a supplier's list; null when neither knows it.</summary>
    public static ShelfLine? One(Shelf shelf, string number, DateOnly on) => All(shelf, on).FirstOrDefault(line => line.Number == number)
        ?? (ListOffer.Of(shelf, number).Count > 0 ? Of(shelf, number, on) : null);

    public bool Matches(string text) =>
        Number.Contains(text, StringComparison.OrdinalIgnoreCase) || Name.Contains(text, StringComparison.OrdinalIgnoreCase);

    private static ShelfLine Of(Shelf shelf, string number, DateOnly on)
    {
        var known = shelf.Number(number);
        var here = shelf.Holdings.Where(holding => holding.Batch.Number == number).ToList();
        var fit = here.Where(holding => !(Age.UseBy(holding.Batch, known) < on)).ToList();
        var claims = shelf.Claims.Where(claim => claim.Number == number).ToValueList();
        var kept = claims.Sum(claim => claim.Count);
        return new(
            number, shelf.NameOf(number),
            fit.GroupBy(holding => holding.Batch.Condition).OrderBy(group => group.Key)
                .Select(group => new ConditionCount(group.Key, group.Sum(holding => holding.Count))).ToValueList(),
            here.Except(fit).Sum(holding => holding.Count), kept, Math.Max(0, fit.Sum(holding => holding.Count) - kept),
            shelf.Orders.SelectMany(order => order.Lines).Where(line => line.Line.Number == number).Sum(line => line.ToCome),
            shelf.Accounts.Where(account => account.Batch.Number == number && account.Place.Kind == StockPlaceKind.Away)
                .Sum(account => account.Count),
            fit.Where(holding => holding.Count > 0).Min(holding => Age.UseBy(holding.Batch, known)), claims);
    }
}

/// <summary>What a supplier's newest list says of a number.</summary>
public sealed record ListOffer(string Supplier, string Currency, DateOnly On, Offer Offer)
{
    public static ValueList<ListOffer> Of(Shelf shelf, string number) => shelf.Lists
        .SelectMany(list => list.Offers.Where(offer => offer.Number == number)
            .Select(offer => new ListOffer(list.Supplier, list.Currency, list.On, offer))).ToValueList();
}

/// <summary>So many pieces in a condition.</summary>
public sealed record ConditionCount(PieceCondition Condition, int Count);
