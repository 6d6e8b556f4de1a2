using Refettle.Logbook;

namespace Refettle.Stock;

/// <summary>Turns what someone does at the shelf into entries, or says why it cannot be.</summary>
public static class ShelfWork
{
    /// <summary>So many of a batch are there, by count: records the difference, if any.</summary>
    public static ValueList<Happening> Counted(Shelf shelf, Batch batch, int count, DateOnly on)
    {
        var difference = count - shelf.Holdings.Where(holding => holding.Batch == batch).Sum(holding => holding.Count);
        return difference == 0 ? [] : [difference > 0
            ? new PiecesMoved(batch, difference, StockPlace.Counting, StockPlace.Shelf, on, "counted")
            : new PiecesMoved(batch, -difference, StockPlace.Shelf, StockPlace.Counting, on, "counted")];
    }

    /// <summary>Pieces go onto a part or joint; of more that were taken, some broke.</summary>
    public static Result<ValueList<Happening>> Fitted(
        Shelf shelf, string number, int count, int broke, (string Car, string Thing) position, DateOnly on) =>
        From(Picking.Of(shelf, number, count + broke, on, position: position), picks =>
            Split(picks, count).Select(part => part.First
                ? new PiecesMoved(part.Pick.Batch, part.Pick.Count, StockPlace.Shelf, StockPlace.On(position.Car, position.Thing), on, null)
                : new PiecesMoved(part.Pick.Batch, part.Pick.Count, StockPlace.Shelf, StockPlace.Broken, on,
                    $"broke at {position.Car} {position.Thing}")));

    /// <summary>Pieces are kept for a part or joint. More than are there may be kept, since what is to
    /// come is kept too; that is noted.</summary>
    public static Result<ValueList<Happening>> Reserved(Shelf shelf, string number, int count, string thing)
    {
        var (kept, there) = (count + shelf.Claims.Where(claim => claim.Number == number).Sum(claim => claim.Count), shelf.OnHand(number));
        var note = new Fault($"number {number}", $"{kept} are kept, {there} {(there == 1 ? "is" : "are")} on the shelf",
            "None is free for another place until more are there; to keep fewer, strike the entry.")
        { Severity = Severity.Note };
        return Result<ValueList<Happening>>.Good([new Reserved(thing, number, count)], kept > there ? [note] : []);
    }

    /// <summary>Pieces leave the shelf for good.</summary>
    public static Result<ValueList<Happening>> Discarded(
        Shelf shelf, string number, int count, PieceCondition? condition, bool broken, DateOnly on, string? why)
    {
        // What is too old may be thrown away, so its age is not looked at.
        var picks = Picking.Of(shelf, number, count, DateOnly.MinValue, condition);
        return From(picks,
            all => all.Reverse()
                .Select(pick => new PiecesMoved(pick.Batch, pick.Count, StockPlace.Shelf, broken ? StockPlace.Broken : StockPlace.Scrapped,
                    on, why)));
    }

    /// <summary>A kit is opened; what it is known to contain comes out.</summary>
    public static Result<ValueList<Happening>> Opened(Shelf shelf, string kit, int count, DateOnly on) =>
        shelf.Number(kit) is not { Contains.Count: > 0 } known
        ? Bad($"number {kit}", "it is not known as a kit",
            "Say what it contains first: refettle stock describe NUMBER --contains OTHER=COUNT.")
        : From(Picking.Of(shelf, kit, count, on), picks => picks.Select(pick => new KitOpened(pick.Batch, pick.Count,
            known.Contains.Select(one => new ArrivedLine(one.Number, pick.Batch with { Number = one.Number }, one.Count * pick.Count))
                .ToValueList())));

    /// <summary>Pieces are made up from others.</summary>
    public static Result<ValueList<Happening>> MadeUp(Shelf shelf, string number, int count, DateOnly on)
    {
        if (shelf.Number(number) is not { MadeFrom.Count: > 0 } known)
            return Bad($"number {number}", "it is not known what it is made from",
                "Say so first: refettle stock describe NUMBER --made-from OTHER=COUNT.");
        var parts = known.MadeFrom.Select(one => Picking.Of(shelf, one.Number, one.Count * count, on)).ToList();
        return parts.Any(part => !part.IsGood)
            ? Result<ValueList<Happening>>.Bad(parts.SelectMany(part => part.Faults))
            : Result<ValueList<Happening>>.Good([new MadeUp(new(number), count,
                parts.SelectMany(part => part.Value).Select(pick => new ArrivedLine(pick.Batch.Number, pick.Batch, pick.Count))
                    .ToValueList())]);
    }

    /// <summary>What is known of a number is written anew, in place of what was known.</summary>
    /// <param name="histories">The logs of all cars, which have the entries that are replaced.</param>
    public static Happening Described(IEnumerable<CarHistory> histories, PartNumber number) =>
        new NumberDescribed(number, histories.SelectMany(history => history.Lines)
        .Where(line => line is { Standing: Standing.InForce, Happening: NumberDescribed before } && before.Number.Id == number.Id)
        .Select(line => line.Entry.Id).Order().ToValueList());

    private static IEnumerable<(Pick Pick, bool First)> Split(ValueList<Pick> picks, int first)
    {
        foreach (var pick in picks)
        {
            var now = Math.Min(first, pick.Count);
            first -= now;
            if (now > 0)
                yield return (pick with { Count = now }, true);
            if (pick.Count > now)
                yield return (pick with { Count = pick.Count - now }, false);
        }
    }

    private static Result<ValueList<Happening>> From(Result<ValueList<Pick>> picks, Func<ValueList<Pick>, IEnumerable<Happening>> then) =>
        picks.IsGood ? Result<ValueList<Happening>>.Good(then(picks.Value).ToValueList()) : Result<ValueList<Happening>>.Bad(picks.Faults);

    private static Result<ValueList<Happening>> Bad(string place, string found, string mend) =>
        Result<ValueList<Happening>>.Bad(new Fault(place, found, mend));
}
