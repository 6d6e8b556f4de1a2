namespace Refettle.Stock.Baskets;

/// <summary>Fills the basket: serves the needs of all cars from one shelf, makes up what can be made up, buys the rest.</summary>
public static class BasketPlanner
{
    /// <summary>Deeper than this nothing is made up from made-up pieces.</summary>
    private const int Deepest = 8;

    /// <param name="needs">Of all cars; a place that is named twice counts once, with its greater count.</param>
    /// <param name="confidence">Above 0, below 1.</param>
    public static Basket Of(Shelf shelf, IEnumerable<Need> needs, DateOnly today, double confidence)
    {
        var all = Once(needs);
        var made = new Dictionary<string, int>();
        var served = Allocation.Of(shelf, all, Supplies.Of(shelf, all, today, confidence));
        for (var depth = 0; depth < Deepest; depth++)
        {
            var below = served.Where(line => line.Missing > 0 && Recipe(shelf, line.Need) is not null).ToList();
            if (below.Count == 0)
                break;
            foreach (var line in below)
                made[line.Need.Number!] = made.GetValueOrDefault(line.Need.Number!) + line.Missing;
            all = [.. all.Select(need => Less(need, below)).Where(need => need.Count > 0), .. below.SelectMany(line => Below(shelf, line))];
            served = Allocation.Of(shelf, all, Supplies.Of(shelf, all, today, confidence));
        }

        var unnumbered = served.Where(line => line.Need.Number is null).Select(line => line.Need).ToValueList();
        var basket = new Basket(served.Where(line => line.Need.Number is not null).ToValueList(),
            PurchasePlanner.Of(shelf, served, today, confidence), unnumbered,
            made.OrderBy(one => one.Key, StringComparer.Ordinal).Select(one => new NumberCount(one.Key, one.Value)).ToValueList(),
            confidence);
        return BasketCheck.Of(shelf, basket) is { Count: > 0 } wrong
            ? throw new InvalidOperationException($"The basket does not keep its books: {string.Join("; ", wrong)}")
            : basket;
    }

    private static ValueList<Need> Once(IEnumerable<Need> needs) =>
        needs.Where(need => need.Count > 0).GroupBy(need => (need.Car, need.Thing))
        .Select(place => place.OrderByDescending(need => need.Count).ThenBy(need => need.Reason).First() with
        { By = place.Min(need => need.By) })
        .OrderBy(need => need.Car, StringComparer.Ordinal).ThenBy(need => need.Thing, StringComparer.Ordinal).ToValueList();

    private static PartNumber? Recipe(Shelf shelf, Need need) =>
        need.Number is { } number && shelf.Number(number) is { MadeFrom.Count: > 0 } known ? known : null;

    private static Need Less(Need need, List<Served> below) =>
        below.FirstOrDefault(line => line.Need == need) is { } line ? need with { Count = need.Count - line.Missing } : need;

    private static IEnumerable<Need> Below(Shelf shelf, Served line) => Recipe(shelf, line.Need)!.MadeFrom.Select(one => new Need(
        line.Need.Car, line.Need.Thing, one.Number, shelf.NameOf(one.Number), one.Count * line.Missing, line.Need.By, NeedReason.MakeUp,
        null, $"goes into {line.Missing} × {line.Need.Number}")
    { Currency = line.Need.Currency });
}
