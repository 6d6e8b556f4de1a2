using Refettle.Logbook;

namespace Refettle.Stock;

/// <summary>Works out what is still kept for which position: what was reserved, less what was fitted there from the shelf.</summary>
internal static class ClaimFold
{
    public static ValueList<Claim> Of(IEnumerable<CarHistory> histories, IReadOnlyCollection<StockLine> lines)
    {
        var there = histories.SelectMany(Things).ToHashSet();
        var fitted = lines.Select(line => line.Happening).OfType<PiecesMoved>()
            .Where(moved => moved.From == StockPlace.Shelf && moved.To.Kind == StockPlaceKind.Car)
            .GroupBy(moved => moved.To).ToDictionary(place => place.Key, place => place.Sum(moved => moved.Count));
        return lines.Where(line => line.Happening is Reserved).Select(line => (line.Car, line.Entry, Reserved: (Reserved)line.Happening))
            .Where(line => there.Contains((line.Car, line.Reserved.Thing)))
            .GroupBy(line => (line.Car, line.Reserved.Thing, line.Reserved.Number))
            .OrderBy(claim => claim.Key.Car, StringComparer.Ordinal).ThenBy(claim => claim.Key.Thing, StringComparer.Ordinal).ThenBy(claim => claim.Key.Number, StringComparer.Ordinal)
            .Select(claim => new Claim(claim.Key.Car, claim.Key.Thing, claim.Key.Number, Left(claim.Sum(line => line.Reserved.Count), StockPlace.On(claim.Key.Car, claim.Key.Thing), fitted), claim.Select(line => line.Entry).ToValueList()))
            .Where(claim => claim.Count > 0).ToList().ToValueList();
    }

    /// <summary>What is fitted uses up claims, whatever number it carries: a position takes one kind of piece.</summary>
    private static int Left(int reserved, StockPlace place, Dictionary<StockPlace, int> fitted)
    {
        var used = Math.Min(reserved, fitted.GetValueOrDefault(place));
        if (used > 0)
            fitted[place] -= used;
        return reserved - used;
    }

    private static IEnumerable<(string, string)> Things(CarHistory history) =>
        history.Car.Structure.Parts.Select(part => (history.Car.Id, $"part {part.Id}"))
            .Concat(history.Car.Structure.Joints.Select(joint => (history.Car.Id, $"joint {joint.Id}")));
}
