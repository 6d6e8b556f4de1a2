namespace Refettle.Stock.Baskets;

/// <summary>Whether a basket keeps its books: looks at what it says, not at how it was filled.</summary>
public static class BasketCheck
{
    /// <summary>All that does not hold; empty when it does.</summary>
    public static ValueList<string> Of(Shelf shelf, Basket basket)
    {
        var given = basket.Lines.SelectMany(line => line.Given).ToList();
        return basket.Lines.Where(line => line.Given.Sum(one => one.Count) + line.Missing != line.Need.Count)
            .Select(line => $"{line.Need.Car} {line.Need.Thing}: served and missing are not what is needed")
            .Concat(given.Where(one => one.Supply.Kit is null).GroupBy(one => (one.Supply.Number, one.Supply.Order))
                .Where(pieces => pieces.Sum(one => one.Count) > There(shelf, pieces.Key.Number, pieces.Key.Order))
                .Select(pieces => $"{pieces.Key.Number}: more are given than there are"))
            .Concat(Kits(shelf, given)).Concat(Misplaced(basket))
            .Concat(basket.Purchases.Where(one => one.Count < one.Needed).Select(one => $"{one.Number}: fewer are bought than are missing"))
            .ToValueList();
    }

    private static int There(Shelf shelf, string number, Guid? order) => order is null
        ? shelf.Holdings.Where(holding => holding.Batch.Number == number && holding.Count > 0).Sum(holding => holding.Count)
        : shelf.Orders.Where(one => one.Id == order).SelectMany(one => one.Lines).Where(line => line.Line.Number == number)
            .Sum(line => line.ToCome);

    /// <summary>A kit serves whole or opened, once.</summary>
    private static IEnumerable<string> Kits(Shelf shelf, List<Given> given)
    {
        foreach (var kit in given.Where(one => one.Supply.Kit is not null).GroupBy(one => one.Supply.Kit!))
        {
            var inside = shelf.Number(kit.Key)!.Contains.ToDictionary(one => one.Number, one => one.Count);
            var opened = kit.GroupBy(one => one.Supply.Number)
                .Max(pieces => (pieces.Sum(one => one.Count) + inside[pieces.Key] - 1) / inside[pieces.Key]);
            var whole = given.Where(one => one.Supply.Number == kit.Key && one.Supply is { Kit: null, Order: null }).Sum(one => one.Count);
            if (opened + whole > There(shelf, kit.Key, null))
                yield return $"{kit.Key}: more kits are given or opened than there are";
        }
    }

    private static IEnumerable<string> Misplaced(Basket basket) =>
        from line in basket.Lines
        from one in line.Given
        where (one.Supply.For is { } only && only != (line.Need.Car, line.Need.Thing)) || one.Supply.Until < line.Need.By
        select $"{line.Need.Car} {line.Need.Thing}: it is given what is kept for another, or is too old by then";
}
