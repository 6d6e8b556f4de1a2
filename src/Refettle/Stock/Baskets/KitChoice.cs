namespace Refettle.Stock.Baskets;

/// <summary>Whether missing pieces are bought one by one or in kits.</summary>
/// <param name="Kits">Kits to buy.</param>
/// <param name="Singles">Pieces to buy by themselves.</param>
/// <param name="Over">Pieces out of the kits that nothing needs yet.</param>
/// <param name="Unsold">Pieces that are sold only in kits, none of which is known.</param>
/// <param name="Proven">No choice costs less, at the prices that are known.</param>
public sealed record KitPurchase(
    ValueList<NumberCount> Kits, ValueList<NumberCount> Singles, ValueList<NumberCount> Over, ValueList<NumberCount> Unsold, Money Cost,
    bool Proven);

/// <summary>Chooses the cheapest purchase, exactly: all numbers of each kit are tried, those that
/// cannot be cheaper any more left out.</summary>
/// <param name="missing">Numbers and counts, each number once.</param>
/// <param name="kits">Kits that can be bought.</param>
/// <param name="price">What so many of a number cost, a kit's or a single piece's; null when not known: it is bought only
/// where nothing with a price does.</param>
/// <param name="kitOnly">Whether a number is sold only inside kits.</param>
public sealed class KitChoice(
    ValueList<NumberCount> missing, ValueList<PartNumber> kits, Func<string, int, Money?> price, Func<string, bool> kitOnly)
{
    private const int MostTries = 200_000;

    private readonly ValueList<PartNumber> _kits =
        kits.Where(kit => kit.Contains.Any(one => missing.Any(other => other.Number == one.Number))).ToValueList();
    private int[] _best = [];
    private (int Unsold, int Unpriced, decimal Cost) _bestCost = (int.MaxValue, int.MaxValue, decimal.MaxValue);
    private int _tries;

    public KitPurchase Best()
    {
        Try(0, new int[_kits.Count], 0);
        var inside = Inside(_best);
        var left = missing.Select(one => one with { Count = one.Count - inside.GetValueOrDefault(one.Number) }).Where(one => one.Count > 0)
            .ToList();
        return new(
            _kits.Zip(_best, (kit, count) => new NumberCount(kit.Id, count)).Where(one => one.Count > 0).ToValueList(),
            left.Where(one => !kitOnly(one.Number)).ToValueList(),
            inside.Select(one => new NumberCount(one.Key,
                one.Value - missing.Where(other => other.Number == one.Key).Sum(other => other.Count))).Where(one => one.Count > 0)
                .OrderBy(one => one.Number, StringComparer.Ordinal).ToValueList(),
            left.Where(one => kitOnly(one.Number)).ToValueList(), new(_bestCost.Cost), _tries < MostTries);
    }

    private void Try(int kit, int[] counts, decimal spent)
    {
        if (_tries++ >= MostTries || (_bestCost is { Unsold: 0, Unpriced: 0 } && spent >= _bestCost.Cost))
            return;
        if (kit == _kits.Count)
        {
            var cost = Rest(counts, spent);
            if (cost.CompareTo(_bestCost) < 0)
                (_best, _bestCost) = ([.. counts], cost);
            return;
        }

        for (var count = 0; count <= Most(_kits[kit]); count++)
        {
            counts[kit] = count;
            Try(kit + 1, counts, spent + (count == 0 ? 0 : price(_kits[kit].Id, count)?.Amount ?? 0));
        }

        counts[kit] = 0;
    }

    /// <summary>Pieces that cannot be had, then those that come at no known price, then what it costs: kits
    /// and the singles that are left.</summary>
    private (int Unsold, int Unpriced, decimal Cost) Rest(int[] counts, decimal spent)
    {
        var (inside, priced) =
            (Inside(counts), Inside([.. counts.Select((count, kit) => price(_kits[kit].Id, count) is null ? 0 : count)]));
        var left = missing.Select(one => one with { Count = Math.Max(0, one.Count - inside.GetValueOrDefault(one.Number)) }).ToList();
        var inUnpriced = missing.Sum(one => Math.Max(0, one.Count - priced.GetValueOrDefault(one.Number))) - left.Sum(one => one.Count);
        var singles = left.Where(one => one.Count > 0 && !kitOnly(one.Number))
            .Select(one => (one.Count, Price: price(one.Number, one.Count))).ToList();
        return (left.Where(one => kitOnly(one.Number)).Sum(one => one.Count),
            inUnpriced + singles.Where(one => one.Price is null).Sum(one => one.Count),
            spent + singles.Sum(one => one.Price?.Amount ?? 0));
    }

    private Dictionary<string, int> Inside(int[] counts) => _kits.Zip(counts).Where(pair => pair.Second > 0)
        .SelectMany(pair => pair.First.Contains.Select(one => (one.Number, Count: one.Count * pair.Second)))
        .GroupBy(one => one.Number).ToDictionary(group => group.Key, group => group.Sum(one => one.Count));

    private int Most(PartNumber kit) =>
        kit.Contains.Max(one => missing.Where(other => other.Number == one.Number).Sum(other => (other.Count + one.Count - 1) / one.Count));
}
