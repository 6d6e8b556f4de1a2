namespace Refettle.Stock.Baskets;

/// <summary>Gives the pieces that are there, or are to come, to the needs of all cars; no piece to two of them.</summary>
/// <remarks>Needs are served in the order of their day; serving one more may only shift earlier ones
/// to other pieces, never leave them without (successive shortest paths: as many pieces serve as can, and among those ways the one that
/// is latest and strangest least).</remarks>
public static class Allocation
{
    private const int PerDayLate = 1;
    private const int Late = 100_000;
    private const int Strange = 10_000;
    private const int Other = 2_000;
    private const int OpenKit = 5_000;
    private const int Ordered = 500;

    /// <returns>The needs in the order given.</returns>
    public static ValueList<Served> Of(Shelf shelf, ValueList<Need> needs, ValueList<Supply> supplies)
    {
        var family = new Family(shelf.Numbers);
        var serving = needs.Select(need => need.Number).Distinct().Where(number => number is not null)
            .ToDictionary(number => number!,
                number => family.ServingFor(number!).Select((one, rank) => (one, rank))
                    .ToDictionary(pair => pair.one.Number, pair => (pair.one.Caveat, pair.rank)));
        var order = Enumerable.Range(0, needs.Count).OrderBy(i => needs[i].By ?? DateOnly.MaxValue)
            .ThenBy(i => needs[i].Car, StringComparer.Ordinal).ThenBy(i => needs[i].Thing, StringComparer.Ordinal).ToList();
        var flow = new Flow(needs.Count, supplies.Select(supply => supply.Count).ToArray());
        for (var need = 0; need < needs.Count; need++)
        {
            for (var supply = 0; supply < supplies.Count; supply++)
            {
                if (Cost(needs[need], supplies[supply], serving) is { } cost)
                    flow.Connect(need, supply, cost);
            }
        }

        foreach (var need in order)
            flow.Serve(need, needs[need].Count);
        return Enumerable.Range(0, needs.Count).Select(need => Result(needs[need], need, flow, supplies, serving)).ToValueList();
    }

    private static Served Result(
        Need need, int place, Flow flow, ValueList<Supply> supplies,
        Dictionary<string, Dictionary<string, (string Caveat, int Rank)>> serving)
    {
        var given = flow.GivenTo(place)
            .Select(pair => new Given(supplies[pair.Supply], pair.Count, serving[need.Number!][supplies[pair.Supply].Number].Caveat,
                DaysLate(need, supplies[pair.Supply]))).ToValueList();
        return new(need, given, need.Count - given.Sum(one => one.Count));
    }

    /// <summary>How unwelcome it is that these pieces serve this need; null when they cannot.</summary>
    private static int? Cost(Need need, Supply supply, Dictionary<string, Dictionary<string, (string Caveat, int Rank)>> serving)
    {
        if (need.Number is null || !serving[need.Number].TryGetValue(supply.Number, out var how)
            || (supply.For is { } only && only != (need.Car, need.Thing)))
            return null;
        var day = need.By ?? supply.From;
        if (supply.Until < day || supply.Until < supply.From)
            return null;
        var late = DaysLate(need, supply);
        return (late > 0 ? Late + Math.Min(late, 3_000) * PerDayLate : 0) + (how.Caveat.Length > 0 ? Strange : how.Rank > 0 ? Other : 0)
            + (supply.Kit is null ? 0 : OpenKit) + (supply.Order is null ? 0 : Ordered) - (supply.For is null ? 0 : 300)
            + (supply.Until is { } until ? Math.Min(200, Math.Max(0, until.DayNumber - day.DayNumber) / 10) : 200) + (int)supply.Condition;
    }

    private static int DaysLate(Need need, Supply supply) => need.By is { } by ? Math.Max(0, supply.From.DayNumber - by.DayNumber) : 0;
}
