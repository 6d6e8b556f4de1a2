using NodaTime;
using Refettle.Timeline.Network;

namespace Refettle.Stock.Baskets;

/// <summary>Tells the timeline of a car how what it takes stands, from a basket: each piece as the basket gave it, none twice.</summary>
public static class ShelfParts
{
    /// <param name="cars">All of them.</param>
    public static PartsAhead Of(Shelf shelf, Basket basket, Car car, ValueList<Car> cars, DateOnly today)
    {
        var lines = basket.Lines.Concat(basket.Unnumbered.Select(need => new Served(need, [], need.Count)))
            .Where(line => line.Need.Car == car.Id);
        var places = lines.GroupBy(line => line.Need.Thing).Select(place => Place(shelf, basket, car, [.. place])).ToValueList();
        return new(places, Away(shelf, car, today),
            TrialFits.Of(shelf, cars, today).Where(fit => Taker(shelf, fit) == car.Id).Select(fit => Trial(fit, car)).ToValueList());
    }

    /// <summary>Parts of the car that are at an outside shop, each once.</summary>
    public static ValueList<AwayPart> Away(Shelf shelf, Car car, DateOnly today) =>
        shelf.Outside.Where(work => work.Car == car.Id && work.IsAway).SelectMany(work => Away(shelf, work, car, today))
            .DistinctBy(away => away.Part).ToValueList();

    /// <summary>It is tried on one car: the first in whose place it may go, else the one it was ordered for.</summary>
    private static string Taker(Shelf shelf, TrialFit fit) =>
        fit.Things.Count > 0 ? fit.Things[0].Split(' ')[0] : shelf.Orders.First(order => order.Id == fit.Order).Car;

    private static PartTrial Trial(TrialFit fit, Car car) =>
        new($"{Identifier.From(fit.Number)}.{fit.By:yyyy-MM-dd}",
            $"Hold up to the car: {fit.Count} × {(fit.Name.Length > 0 ? fit.Name : fit.Number)}; {fit.Supplier} takes it back until {DayWords.Day(fit.By)}",
        LocalDate.FromDateOnly(fit.By),
        fit.Things.Where(thing => thing.StartsWith($"{car.Id} part ", StringComparison.Ordinal))
            .Select(thing => thing[$"{car.Id} part ".Length..]).ToValueList());

    private static PlaceParts Place(Shelf shelf, Basket basket, Car car, List<Served> lines)
    {
        var toCome = lines.SelectMany(line => line.Given).Where(given => given.Supply.Order is not null)
            .Select(given => OfOrder(shelf, shelf.Orders.First(order => order.Id == given.Supply.Order), given.Supply.From));
        var bought = lines.Where(line => line.Missing > 0).SelectMany(line => line.Need.Number is null ? [Unnumbered(car, line.Need)]
            : basket.Purchases.Where(one => one.IsFor(car.Id, line.Need.Thing)).Select(OfPurchase));
        return new(lines[0].Need.Thing, string.Join("; ", lines.Select(Says)), lines.Any(line => line.Need.Reason != NeedReason.MayBreak),
            toCome.Concat(bought).DistinctBy(one => one.Id).ToValueList());
    }

    private static string Says(Served line)
    {
        var (hand, come) = (line.Given.Where(given => given.Supply.Order is null).Sum(given => given.Count),
            line.Given.Where(given => given.Supply.Order is not null).Sum(given => given.Count));
        var parts = new[] { (hand, "in hand"), (come, "ordered"), (line.Missing, "not ordered yet") }.Where(part => part.Item1 > 0)
            .Select(part => $"{part.Item1} {part.Item2}");
        return $"{line.Need.Count} × {line.Need.Number ?? line.Need.What}: {string.Join(", ", parts)}";
    }

    /// <summary>One order is one consignment; what came of it already is on the shelf.</summary>
    private static Consignment OfOrder(Shelf shelf, Order order, DateOnly from)
    {
        var days = from.DayNumber - order.On.DayNumber;
        var named = order.Promised is { } promised ? Math.Max(1, promised.DayNumber - order.On.DayNumber) : Supplies.UnpromisedDays;
        var numbers = order.Lines.Where(line => line.ToCome > 0)
            .Select(line => $"{line.ToCome} × {shelf.NameOf(line.Line.Number) switch { "" => line.Line.Number, var name => name }}");
        var says = $"On the way from {order.Supplier}: {string.Join(", ", numbers)}; {(order.Promised is { } day ? $"promised {DayWords.Day(day)}" : "no day promised")}, counted on for {DayWords.Day(from)}";
        return new($"{Identifier.From(order.Supplier)}.{order.On:yyyy-MM-dd}{(Before(shelf, order) is > 0 and var before ? $".{before + 1}" : "")}", says, order.Supplier, LocalDate.FromDateOnly(order.On), named, days, order.Promised is null ? Origin.Default : Origin.User);
    }

    /// <summary>How many orders the same supplier got on the same day before it.</summary>
    private static int Before(Shelf shelf, Order order) => shelf.Orders.TakeWhile(other => other.Id != order.Id)
        .Count(other => other.On == order.On && Identifier.From(other.Supplier) == Identifier.From(order.Supplier));

    private static Consignment OfPurchase(Purchase purchase) => new(
        Identifier.From(purchase.Number),
        $"On the way: {purchase.Count} × {(purchase.Name.Length > 0 ? purchase.Name : purchase.Number)}{(purchase.Supplier is null ? "" : $", {purchase.Supplier}")}; to be ordered, {purchase.Days} days counted on",
        purchase.Supplier, null, purchase.NamedDays, purchase.Days, purchase.Origin);

    /// <summary>Without a number nobody is known who sells it: fasteners are one order by their words, parts one each.</summary>
    private static Consignment Unnumbered(Car car, Need need)
    {
        var days = car.Estimates.FirstOrDefault(one => $"part {one.Part}" == need.Thing)?.LeadDays;
        var isPart = need.Thing.StartsWith("part ", StringComparison.Ordinal);
        return new(isPart ? need.Thing["part ".Length..] : need.Reason == NeedReason.Coat ? Identifier.From(need.What) : "fasteners",
            $"On the way: {(isPart || need.Reason == NeedReason.Coat ? need.What : "single-use fasteners, clips and seals without a number")}; to be ordered",
            null, null, days ?? Deliveries.DefaultDays, days ?? Deliveries.DefaultDays, days is null ? Origin.Default : Origin.User);
    }

    /// <summary>A shop is counted on for its middle day: nothing is ordered by it, and how unsure it is the forecast says.</summary>
    private static IEnumerable<AwayPart> Away(Shelf shelf, OutsideWork work, Car car, DateOnly today)
    {
        var named = work.Promised is { } promised ? Math.Max(1, promised.DayNumber - work.On.DayNumber) : Supplies.UnpromisedDays;
        var counted = work.On.AddDays((int)Math.Ceiling(named * SupplierRecord.OfShop(shelf, work.To, today).Factor(0.5)));
        var back = counted > today ? counted : Supplies.Overdue(today, named);
        var says = $"{work.Work}; {(work.Promised is { } day ? $"promised {DayWords.Day(day)}" : "no day promised")}, counted on for {DayWords.Day(back)}";
        return from line in work.Lines
               where line.Away > 0
               let part = car.Structure.Parts.FirstOrDefault(one => $"part {one.Id}" == line.Item.What)
               where part is not null
               select new AwayPart(part.Id, part.Name,
                   new($"{Identifier.From(work.To)}.{part.Id}", $"At {work.To}: {part.Name}, {says}", work.To,
                       LocalDate.FromDateOnly(work.On), named, back.DayNumber - work.On.DayNumber,
                       work.Promised is null ? Origin.Default : Origin.User));
    }
}
