using Refettle.Logbook;
using Refettle.Stock;
using Refettle.Web.Find;

namespace Refettle.Web.Stores;

/// <summary>What the page of the shelf shows.</summary>
public sealed class ShelfRoom(Refettle.Stock.Shelf shelf, DateOnly today)
{
    private readonly ValueList<ShelfLine> _lines = ShelfLine.All(shelf, today);

    public ValueList<Debt> Debts => shelf.Debts;

    public ValueList<Fault> Faults => shelf.Faults;

    /// <summary>Lines by what is typed: number, name, or a place that pieces are kept for.</summary>
    public ValueList<ShelfLine> Found(string typed, int most) => Finder.Find(
            _lines.Select(line => new Findable(line.Number, line.Name.Length > 0 ? line.Name : line.Number,
                $"{line.Number} {string.Join(' ', line.Claims.Select(claim => claim.Thing))}")), typed, most)
        .Select(found => _lines.First(line => line.Number == found.Key)).ToValueList();

    /// <summary>Counts in a few words.</summary>
    public static string Counts(ShelfLine line)
    {
        var pieces = line.OnHand.Count == 0
            ? "none"
            : string.Join(", ", line.OnHand.Select(one => $"{one.Count} {one.Condition.ToString().ToLowerInvariant()}"));
        string[] more = [line.TooOld > 0 ? $"{line.TooOld} too old" : "", line.Kept > 0 ? $"{line.Kept} kept" : "",
            line.ToCome > 0 ? $"{line.ToCome} to come" : "", line.Away > 0 ? $"{line.Away} away" : ""];
        return string.Join(", ", more.Where(text => text.Length > 0).Prepend(pieces));
    }

    /// <summary>How many nothing is kept for; where more are kept than are there, that.</summary>
    public static string Free(ShelfLine line) => line.OnHand.Sum(one => one.Count) is var here && line.Kept > here
        ? $"{line.Kept} are kept and {here} {(here == 1 ? "is" : "are")} there: none is free, and what is to come is kept too."
        : $"{line.Free} free";

    /// <summary>Where a number may be kept for, on a car: what takes it first, then all parts and joints.</summary>
    public IEnumerable<Findable> Places(Car car, string number)
    {
        var family = new Family(shelf.Numbers);
        var takes = car.Numbers.Where(position => family.Serves(number, position.Number)).Select(position => position.Thing).ToHashSet();
        return car.Structure.Parts.Where(part => !part.Fixed).Select(part => (Thing: $"part {part.Id}", part.Name))
            .Concat(car.Structure.Joints.Select(joint => (Thing: $"joint {joint.Id}", Name: joint.Name ?? joint.Id)))
            .Select(place => new Findable(place.Thing, place.Name, place.Thing, Rank: takes.Contains(place.Thing) ? 0 : 1));
    }

    /// <summary>So many new pieces are there, by count.</summary>
    public ValueList<Happening> Counted(string number, int count) =>
        ShelfWork.Counted(shelf, new(PartNumber.Canonical(number)), count, today);

    public Result<ValueList<Happening>> Fitted(string number, string car, string thing, int count) =>
        ShelfWork.Fitted(shelf, number, count, 0, (car, thing), today);
}
