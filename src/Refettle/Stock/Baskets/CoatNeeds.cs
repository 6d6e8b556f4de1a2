using Refettle.Coating;
using Refettle.Timeline.Network;

namespace Refettle.Stock.Baskets;

/// <summary>The paint that coats take: for a system that the owner chose as many packs as its litres fill (<see cref="PaintNeeds"/>), for
/// the coats that a timeline plans by itself one pack of each kind at least.</summary>
public static class CoatNeeds
{
    /// <param name="network">Null where there is no timeline.</param>
    /// <param name="by">The day by which it must be in hand, where its coat has none.</param>
    /// <param name="days">The days of the coats, by thing.</param>
    public static ValueList<Need> Of(Car car, Shelf shelf, TaskNetwork? network, DateOnly? by, IReadOnlyDictionary<string, DateOnly>? days)
    {
        var worked = PaintNeeds.Of(car.Coating).GroupBy(need => CoatTasks.Word(car.Coating.Product(need.Product)!))
            .ToDictionary(group => group.Key, group => group.ToValueList());
        return (network?.Tasks ?? []).Where(task => task.Mark is not { Progress: TaskProgress.Done }).Select(task => task.Coat)
            .OfType<string>().Concat(worked.Keys).Distinct().Order(StringComparer.Ordinal)
            .Select(coat => Of(car, shelf, coat, worked.GetValueOrDefault(coat, []),
                days?.TryGetValue($"coat {coat}", out var day) == true ? day : by)).ToValueList();
    }

    private static Need Of(Car car, Shelf shelf, string coat, ValueList<PaintNeed> paints, DateOnly? day)
    {
        var packs = paints.Select(paint => Packs(car, paint, car.Coating.Product(paint.Product)!.Figure(FigureKind.Pack))).ToList();
        return new(car.Id, $"coat {coat}", NumberOf(shelf, coat), coat, packs.Count == 0 ? 1 : packs.Sum(one => one.Count), day,
            NeedReason.Coat, null,
            packs.Count == 0 ? "one pack at least: see what the sheet says of coverage" : string.Join(" ", packs.Select(one => one.Says)))
        { Currency = car.Currency };
    }

    /// <summary>A pack that would be used to less than a millionth is not bought.</summary>
    private static (int Count, string Says) Packs(Car car, PaintNeed paint, decimal? pack) => (paint.Litres, pack) switch
    {
        ({ } litres, { } each) when Math.Max(1, (int)Math.Ceiling((litres / (double)each) - 1e-6)) is var count =>
            (count, $"{PaintNeeds.Words(car, paint)} {(paint.WithoutArea.Count > 0 ? "At least " : "")}{(count == 1 ? "1 pack" : $"{count} packs")} of {each:0.##} L."),
        ({ }, null) => (1, $"{PaintNeeds.Words(car, paint)} One pack at least: what is in one is not entered (pack=1L)."),
        _ => (1, $"{PaintNeeds.Words(car, paint)} One pack at least."),
    };

    /// <summary>A number that is called just so, the one that is on the shelf first.</summary>
    private static string? NumberOf(Shelf shelf, string coat) =>
        shelf.Numbers.Where(number => Is(number.Name, coat)).OrderByDescending(number => shelf.OnHand(number.Id) > 0)
            .Select(number => number.Id)
        .Concat(shelf.Lists.SelectMany(list => list.Offers).Where(offer => Is(offer.Name, coat)).Select(offer => offer.Number))
        .FirstOrDefault();

    private static bool Is(string name, string coat) => string.Equals(name, coat, StringComparison.OrdinalIgnoreCase);
}
