using Refettle.Logbook;

namespace Refettle.Stock;

/// <summary>Works out what is still kept for which position: what was reserved, less what was fitted
/// there from the shelf afterwards.</summary>
internal sealed class ClaimFold
{
    private readonly Dictionary<(string Car, string Thing), List<Claim>> _claims = [];

    /// <param name="lines">Entries of all cars, those of one car in the order of its log.</param>
    public static ValueList<Claim> Of(IEnumerable<CarHistory> histories, IReadOnlyCollection<StockLine> lines)
    {
        var (fold, there) = (new ClaimFold(), histories.SelectMany(Things).ToHashSet());

        // What is told in the log of another car has no order among a car's own entries: it counts as the last.
        foreach (var line in lines.OrderBy(line => FittedAt(line.Happening) is { } place && place.Car != line.Car))
            fold.Apply(line);
        return fold._claims.Where(place => there.Contains(place.Key)).SelectMany(place => place.Value)
            .OrderBy(claim => claim.Car, StringComparer.Ordinal).ThenBy(claim => claim.Thing, StringComparer.Ordinal)
            .ThenBy(claim => claim.Number, StringComparer.Ordinal).ToValueList();
    }

    private void Apply(StockLine line)
    {
        if (line.Happening is Reserved reserved)
            Keep(_claims.TryGetValue((line.Car, reserved.Thing), out var known) ? known : _claims[(line.Car, reserved.Thing)] = [], line,
                reserved);
        else if (FittedAt(line.Happening) is { } place && _claims.TryGetValue(place, out var claims))
            Use(claims, ((PiecesMoved)line.Happening).Count);
    }

    private static void Keep(List<Claim> claims, StockLine line, Reserved reserved)
    {
        var place = claims.FindIndex(claim => claim.Number == reserved.Number);
        if (place < 0)
            claims.Add(new(line.Car, reserved.Thing, reserved.Number, reserved.Count, [line.Entry]));
        else
            claims[place] = claims[place] with
            { Count = claims[place].Count + reserved.Count, Entries = [.. claims[place].Entries, line.Entry] };
    }

    /// <summary>What is fitted uses up claims, whatever number it carries: a position takes one kind of piece.</summary>
    private static void Use(List<Claim> claims, int fitted)
    {
        foreach (var claim in claims.OrderBy(claim => claim.Number, StringComparer.Ordinal).ToList())
        {
            var used = Math.Min(claim.Count, fitted);
            fitted -= used;
            claims[claims.IndexOf(claim)] = claim with { Count = claim.Count - used };
        }

        claims.RemoveAll(claim => claim.Count == 0);
    }

    private static (string Car, string Thing)? FittedAt(StockHappening happening) =>
        happening is PiecesMoved moved && moved.From == StockPlace.Shelf ? moved.To.Position() : null;

    private static IEnumerable<(string, string)> Things(CarHistory history) =>
        history.Car.Structure.Parts.Select(part => (history.Car.Id, $"part {part.Id}"))
            .Concat(history.Car.Structure.Joints.Select(joint => (history.Car.Id, $"joint {joint.Id}")));
}
