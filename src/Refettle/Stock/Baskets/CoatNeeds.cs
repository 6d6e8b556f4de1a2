using Refettle.Timeline.Network;

namespace Refettle.Stock.Baskets;

/// <summary>The paint that the coats of a timeline take: one pack of each kind. Whether a pack suffices is not worked out here.</summary>
public static class CoatNeeds
{
    public static ValueList<Need> Of(Car car, Shelf shelf, TaskNetwork network, DateOnly? by, IReadOnlyDictionary<string, DateOnly>? days) => network.Tasks
        .Where(task => task.Mark is not { Progress: TaskProgress.Done }).Select(task => task.Coat).OfType<string>().Distinct().Order(StringComparer.Ordinal)
        .Select(coat => new Need(car.Id, $"coat {coat}", NumberOf(shelf, coat), coat, 1, days?.TryGetValue($"coat {coat}", out var day) == true ? day : by, NeedReason.Coat, null, "one pack at least: see what the sheet says of coverage")).ToValueList();

    /// <summary>A number that is called just so, the one that is on the shelf first.</summary>
    private static string? NumberOf(Shelf shelf, string coat) => shelf.Numbers.Where(number => Is(number.Name, coat)).OrderByDescending(number => shelf.OnHand(number.Id) > 0).Select(number => number.Id)
        .Concat(shelf.Lists.SelectMany(list => list.Offers).Where(offer => Is(offer.Name, coat)).Select(offer => offer.Number)).FirstOrDefault();

    private static bool Is(string name, string coat) => string.Equals(name, coat, StringComparison.OrdinalIgnoreCase);
}
