namespace Refettle.Stock.Baskets;

/// <summary>Something to hold up to the car while it can still go back: a task for the timeline.</summary>
/// <param name="Number">What arrived.</param>
/// <param name="Count">Pieces that are on the shelf and may go back.</param>
/// <param name="By">The last day that the supplier takes it back.</param>
/// <param name="Things">Where it may be tried, as car and thing; empty when no position takes it.</param>
public sealed record TrialFit(Guid Order, string Supplier, string Number, string Name, int Count, DateOnly By, ValueList<string> Things)
{
    public string Says =>
        $"trial-fit {Count} × {(Name.Length > 0 ? Name : Number)} by {By:yyyy-MM-dd}: {Supplier} takes it back until then";
}

/// <summary>Finds what should be tried on before its return deadline.</summary>
public static class TrialFits
{
    /// <param name="cars">The cars whose positions may take it.</param>
    /// <returns>The nearest deadline first; what is past it is not among them.</returns>
    public static ValueList<TrialFit> Of(Shelf shelf, IEnumerable<Car> cars, DateOnly today)
    {
        var family = new Family(shelf.Numbers);
        var positions = cars.SelectMany(car => car.Numbers.Select(number => (car.Id, number.Thing, number.Number))).ToList();
        var left = shelf.Holdings.GroupBy(holding => holding.Batch.Number)
            .ToDictionary(group => group.Key, group => Math.Max(0, group.Sum(holding => holding.Count)));
        var fits = new List<TrialFit>();
        foreach (var (order, arrival) in Returnable(shelf, today))
        {
            var count = Math.Min(left.GetValueOrDefault(arrival.Number), arrival.Count);
            if (count <= 0)
                continue;
            left[arrival.Number] -= count;
            fits.Add(new(order.Id, order.Supplier, arrival.Number, shelf.NameOf(arrival.Number), count,
                arrival.On.AddDays(order.ReturnDays!.Value),
                positions.Where(position => family.Serves(arrival.Number, position.Number))
                    .Select(position => $"{position.Id} {position.Thing}").ToValueList()));
        }

        return fits.OrderBy(fit => fit.By).ThenBy(fit => fit.Number, StringComparer.Ordinal).ToValueList();
    }

    /// <summary>The newest arrivals first: what is still on the shelf is taken to be of those.</summary>
    private static IEnumerable<(Order Order, Arrival Arrival)> Returnable(Shelf shelf, DateOnly today) =>
        from order in shelf.Orders
        where order.ReturnDays is not null
        from line in order.Lines
        from arrival in Untried(shelf, order, line)
        where arrival.On.AddDays(order.ReturnDays!.Value) >= today
        orderby arrival.On descending, order.Id
        select (order, arrival);

    /// <summary>What was tried or sent back is taken to be of the oldest arrivals, and what was sent back to be what did not fit.</summary>
    private static IEnumerable<Arrival> Untried(Shelf shelf, Order order, OrderedLine line)
    {
        var tried = shelf.Tried.Where(one => one.Order == order.Id && line.Arrivals.Any(arrival => arrival.Number == one.Number))
            .ToLookup(one => one.Fits, one => one.Count);
        var settled = tried[true].Sum() + Math.Max(tried[false].Sum(), line.SentBack);
        foreach (var arrival in line.Arrivals)
        {
            var left = Math.Max(0, arrival.Count - settled);
            settled -= arrival.Count - left;
            if (left > 0)
                yield return arrival with { Count = left };
        }
    }
}
