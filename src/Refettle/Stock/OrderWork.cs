using Refettle.Logbook;

namespace Refettle.Stock;

/// <summary>Turns what someone does with orders and outside work into entries, or says why it cannot be.</summary>
public static class OrderWork
{
    /// <summary>What came of an order.</summary>
    /// <param name="lines">Numbers and counts; empty for all that was still to come.</param>
    /// <param name="made">When rubber was made, where it is marked.</param>
    public static Result<Happening> Arrived(
        Shelf shelf, Order order, ValueList<NumberCount> lines, DateOnly on, DateOnly? made, DateOnly? useBy) =>
        Came(shelf, order, lines, on, made, useBy, TooMany);

    /// <summary>The same where more may have come than was ordered: it is kept, and billed at its price.</summary>
    public static Result<Happening> ArrivedWithMore(
        Shelf shelf, Order order, ValueList<NumberCount> lines, DateOnly on, DateOnly? made, DateOnly? useBy) =>
        Came(shelf, order, lines, on, made, useBy, (_, _) => []);

    private static Result<Happening> Came(
        Shelf shelf, Order order, ValueList<NumberCount> lines, DateOnly on, DateOnly? made, DateOnly? useBy,
        Func<Order, List<ArrivedLine>, IEnumerable<Fault>> against)
    {
        var came = lines.Count > 0 ? Summed(lines) : ToCome(order);
        var faults = new List<Fault>();
        if (came.Count == 0)
            faults.Add(new(Name(order), "nothing of it is still to come", "Look at the order: refettle orders."));
        var family = new Family(shelf.Numbers);
        var arrived = new List<ArrivedLine>();
        foreach (var (number, count) in came)
        {
            // What arrives may carry the number that superseded the one that was ordered.
            var line = order.Lines.FirstOrDefault(one => one.Line.Number == number)
                ?? order.Lines.FirstOrDefault(one => family.Serves(number, one.Line.Number));
            if (line is null)
                faults.Add(NotOrdered(order, number));
            else
                arrived.Add(new(line.Line.Number, new(number, line.Line.Condition, made, useBy), count));
        }

        faults.AddRange(against(order, arrived));
        return faults.Any(fault => fault.Severity == Severity.Error) ? Result<Happening>.Bad(faults)
            : Result<Happening>.Good(new Arrived(order.Id, arrived.ToValueList(), on), faults);
    }

    /// <summary>One delivery entered twice is on the shelf and in the books twice.</summary>
    private static IEnumerable<Fault> TooMany(Order order, List<ArrivedLine> arrived) =>
        from line in arrived.GroupBy(line => line.Ordered)
        let came = line.Sum(one => one.Count)
        let toCome = order.Lines.First(one => one.Line.Number == line.Key).ToCome
        where came > toCome
        select new Fault($"{Name(order)}, {line.Key}", $"{came} came, {toCome} {(toCome == 1 ? "was" : "were")} still to come",
            "Look whether it is the right order, or entered already; if more came and stays here, say --more.");

    /// <param name="lines">Numbers and counts; empty for all that is still to come.</param>
    public static Result<Happening> Cancelled(Order order, ValueList<NumberCount> lines)
    {
        var cancelled = lines.Count > 0 ? Summed(lines) : ToCome(order);
        var faults = cancelled.Where(line => order.Lines.All(one => one.Line.Number != line.Number))
            .Select(line => NotOrdered(order, line.Number))
            .Concat(cancelled.Where(line => order.Lines.Any(one => one.Line.Number == line.Number && one.ToCome < line.Count))
                .Select(line => new Fault($"{Name(order)}, {line.Number}", $"{line.Count} cancelled, fewer are still to come",
                    "Cancel what is still to come, or send back what came.")))
            .Concat(cancelled.Count == 0
                ? [new Fault(Name(order), "nothing of it is still to come", "Look at the order: refettle orders.")]
                : []).ToList();
        return faults.Count > 0 ? Result<Happening>.Bad(faults) : Result<Happening>.Good(new OrderCancelled(order.Id, cancelled));
    }

    /// <summary>Pieces go back to the supplier.</summary>
    public static Result<Happening> SentBack(Shelf shelf, Order order, ValueList<NumberCount> lines, DateOnly on, string? why)
    {
        var (faults, back) = (new List<Fault>(), new List<ArrivedLine>());
        foreach (var group in Summed(lines).GroupBy(one => LineOf(order, one.Number)))
        {
            var (count, numbers) = (group.Sum(one => one.Count), string.Join(", ", group.Select(one => one.Number)));
            if (group.Key is not { } line)
                faults.AddRange(group.Select(one => NotOrdered(order, one.Number)));
            else if (line.Arrived - line.SentBack < count)
                faults.Add(new($"{Name(order)}, {numbers}",
                    $"{count} to go back, {line.Arrived - line.SentBack} came of it and are still here",
                    "Send back fewer, or name another order."));
            else
                Pick(line, group);
        }

        return faults.Count > 0
            ? Result<Happening>.Bad(faults)
            : Result<Happening>.Good(new SentBack(order.Id, back.ToValueList(), on, why));

        void Pick(OrderedLine line, IEnumerable<NumberCount> some)
        {
            foreach (var picks in some.Select(one => Picking.Of(shelf, one.Number, one.Count, DateOnly.MinValue, line.Line.Condition)))
            {
                faults.AddRange(picks.Faults);
                back.AddRange(picks.IsGood ? picks.Value.Select(pick => new ArrivedLine(line.Line.Number, pick.Batch, pick.Count)) : []);
            }
        }
    }

    private static OrderedLine? LineOf(Order order, string number) =>
        order.Lines.FirstOrDefault(one => one.Line.Number == number || one.Arrivals.Any(arrival => arrival.Number == number));

    /// <summary>Parts of a car that cannot leave, because as many as it has are away already.</summary>
    public static IEnumerable<Fault> Away(Shelf shelf, Car car, IEnumerable<NumberCount> things) =>
        from thing in things
        let part = car.Structure.Parts.FirstOrDefault(part => $"part {part.Id}" == thing.Number)
        where part is not null
        let away = shelf.Outside
            .Where(work => work.Car == car.Id && work.Lines.Any(line => line.Item.What == thing.Number && line.Away > 0)).ToList()
        where away.Count > 0
            && away.SelectMany(work => work.Lines).Where(line => line.Item.What == thing.Number)
                .Sum(line => line.Away) + thing.Count > part.Count
        select new Fault(thing.Number, $"it is away at {string.Join(", ", away.Select(work => work.To))} already",
            "Record first that it is back: refettle orders back SHOP.");

    /// <summary>Things come back from an outside shop.</summary>
    /// <param name="items">What and how many; empty for all that is away.</param>
    /// <param name="now">The condition of pieces that go onto the shelf.</param>
    public static Result<Happening> CameBack(
        OutsideWork work, ValueList<NumberCount> items, string condition, bool good, PieceCondition now, DateOnly on)
    {
        var back = items.Count > 0
            ? Summed(items)
            : work.Lines.Where(line => line.Away > 0).Select(line => new NumberCount(line.Item.What, line.Away)).ToValueList();
        var known = work.Lines.Select(line => line.Item.What).ToList();
        var faults = back.Where(item => !known.Contains(item.Number))
            .Select(item => new Fault($"outside work at {work.To}", $"{item.Number} is not on the list of what left",
                NearNames.Ask(item.Number, known, $"On it are {string.Join(", ", known)}.")))
            .Concat(back.Where(item => work.Lines.Any(line => line.Item.What == item.Number && line.Away < item.Count))
                .Select(item => new Fault($"outside work at {work.To}, {item.Number}", $"{item.Count} came back, fewer are away",
                    "Count again; what is not yours goes back.")))
            .Concat(back.Count == 0
                ? [new Fault($"outside work at {work.To}", "everything is back already", "Look at the list: refettle orders.")]
                : []).ToList();
        return faults.Count > 0 ? Result<Happening>.Bad(faults) : Result<Happening>.Good(new CameBack(work.Id, back.Select(item =>
            new BackItem(item.Number, item.Count, As(work, item.Number, now, good), condition, good)).ToValueList(), on));
    }

    private static Batch? As(OutsideWork work, string what, PieceCondition now, bool good) =>
        good && work.Lines.First(line => line.Item.What == what).Item.Batch is { } batch ? batch with { Condition = now } : null;

    /// <summary>Each once: what is named twice is asked for with both its counts.</summary>
    private static ValueList<NumberCount> Summed(ValueList<NumberCount> lines) =>
        lines.GroupBy(line => line.Number).Select(group => new NumberCount(group.Key, group.Sum(line => line.Count))).ToValueList();

    private static ValueList<NumberCount> ToCome(Order order) =>
        order.Lines.Where(line => line.ToCome > 0).Select(line => new NumberCount(line.Line.Number, line.ToCome)).ToValueList();

    private static string Name(Order order) => $"order at {order.Supplier} of {order.On:yyyy-MM-dd}";

    private static Fault NotOrdered(Order order, string number) => new($"{Name(order)}", $"{number} was not ordered there",
        NearNames.Ask(number, order.Lines.Select(line => line.Line.Number),
            $"It has {string.Join(", ", order.Lines.Select(line => line.Line.Number))}."));
}
