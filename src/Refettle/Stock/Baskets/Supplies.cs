namespace Refettle.Stock.Baskets;

/// <summary>All pieces that could serve needs: on the shelf, in kits that may be opened, and to come.</summary>
public static class Supplies
{
    /// <summary>Days that an order without a promise takes. A default of the program, not a fact.</summary>
    public const int UnpromisedDays = 14;

    /// <param name="confidence">Orders are counted on for the day that they keep with this probability.</param>
    /// <param name="needs">Kits that are needed as such are not opened for what is in them.</param>
    public static ValueList<Supply> Of(Shelf shelf, ValueList<Need> needs, DateOnly today, double confidence)
    {
        var here = shelf.Holdings.GroupBy(holding => holding.Batch.Number)
            .SelectMany(group => Opened(shelf, group.Key, OnShelf(shelf, [.. group], today), needs));
        return here.Concat(ToCome(shelf, today, confidence)).Where(supply => supply.Count > 0).ToValueList();
    }

    /// <summary>The day an order is counted on.</summary>
    public static DateOnly Expected(Shelf shelf, Order order, DateOnly today, double confidence)
    {
        var promised = order.Promised is { } day ? Math.Max(1, day.DayNumber - order.On.DayNumber) : UnpromisedDays;
        var expected = order.On.AddDays((int)Math.Ceiling(promised * SupplierRecord.Of(shelf, order.Supplier, today).Factor(confidence)));

        return expected > today ? expected : Overdue(today, promised);
    }

    /// <summary>What is overdue beyond what was counted on takes a quarter of its promise more: a choice of the program.</summary>
    public static DateOnly Overdue(DateOnly today, int promised) => today.AddDays(Math.Max(2, promised / 4));

    /// <summary>The pieces of one number, those kept for a place apart from the free ones. More kept than there
    /// are: the first ones have them.</summary>
    private static IEnumerable<Supply> OnShelf(Shelf shelf, List<Holding> holdings, DateOnly today)
    {
        var claims = new Queue<(Claim Claim, int Left)>(shelf.Claims.Where(claim => claim.Number == holdings[0].Batch.Number)
            .Select(claim => (claim, claim.Count)));
        var known = shelf.Number(holdings[0].Batch.Number);
        foreach (var holding in holdings.Where(holding => holding.Count > 0 && !(Age.UseBy(holding.Batch, known) < today)))
        {
            var left = holding.Count;
            while (left > 0)
            {
                var (claim, kept) = claims.Count > 0 ? claims.Dequeue() : (null, left);
                var taken = Math.Min(left, kept);
                yield return new(holding.Batch.Number, holding.Batch.Condition, taken, today, Age.UseBy(holding.Batch, known), null, null,
                    claim is null ? null : (claim.Car, claim.Thing));
                left -= taken;
                if (claim is not null && kept > taken)
                    claims = new([(claim, kept - taken), .. claims]);
            }
        }
    }

    /// <summary>Kits that nobody needs as kits stand for what is in them.</summary>
    private static IEnumerable<Supply> Opened(Shelf shelf, string number, IEnumerable<Supply> supplies, ValueList<Need> needs)
    {
        if (shelf.Number(number) is not { Contains.Count: > 0 } kit)
            return supplies;
        var family = new Family(shelf.Numbers);
        return Opened(kit, supplies,
            needs.Where(need => need.Number is not null && family.Serves(number, need.Number)).Sum(need => need.Count));
    }

    /// <param name="wanted">So many are needed as kits, of all batches together.</param>
    private static IEnumerable<Supply> Opened(PartNumber kit, IEnumerable<Supply> supplies, int wanted)
    {
        foreach (var supply in supplies)
        {
            var whole = supply.For is null ? Math.Min(supply.Count, wanted) : supply.Count;
            yield return supply with { Count = whole };
            foreach (var one in kit.Contains)
                yield return supply with { Number = one.Number, Count = one.Count * (supply.Count - whole), Kit = kit.Id };
            if (supply.For is null)
                wanted -= whole;
        }
    }

    private static IEnumerable<Supply> ToCome(Shelf shelf, DateOnly today, double confidence) =>
        from order in shelf.Orders
        where order.IsOpen
        let day = Expected(shelf, order, today, confidence)
        from line in order.Lines
        where line.ToCome > 0
        select new Supply(line.Line.Number, line.Line.Condition, line.ToCome, day, UseBy(shelf, line.Line.Number, day), order.Id, null,
            null);

    /// <summary>New rubber is taken to be made when it comes: looked at again when it is here.</summary>
    private static DateOnly? UseBy(Shelf shelf, string number, DateOnly day) =>
        shelf.Number(number)?.ShelfLifeMonths is { } months ? day.AddMonths(months) : null;
}
