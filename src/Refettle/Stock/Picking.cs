namespace Refettle.Stock;

/// <summary>Pieces picked from the shelf.</summary>
public sealed record Pick(Batch Batch, int Count);

/// <summary>Chooses which pieces to take: what goes off first is taken first, what is kept for others is left.</summary>
public static class Picking
{
    /// <summary>Pieces on the shelf that nothing is kept for, 0 or more.</summary>
    public static int Free(Shelf shelf, string number) =>
        Math.Max(0, shelf.OnHand(number) - shelf.Claims.Where(claim => claim.Number == number).Sum(claim => claim.Count));

    /// <param name="on">The day; what is too old by then is left.</param>
    /// <param name="condition">Only these; null for any.</param>
    /// <param name="position">What it is for, as car and thing: what is kept for it may be taken. Null when it is for none.</param>
    /// <returns>The picks, or why there are not enough.</returns>
    public static Result<ValueList<Pick>> Of(
        Shelf shelf, string number, int count, DateOnly on, PieceCondition? condition = null, (string Car, string Thing)? position = null)
    {
        var known = shelf.Number(number);
        var all = shelf.Holdings.Where(holding => holding.Batch.Number == number && holding.Count > 0).ToList();
        var fit = all.Where(holding => (condition ?? holding.Batch.Condition) == holding.Batch.Condition
            && !(Age.UseBy(holding.Batch, known) < on)).ToList();
        var kept = shelf.Claims.Where(claim => claim.Number == number && (claim.Car, claim.Thing) != position).Sum(claim => claim.Count);
        var free = Math.Min(fit.Sum(holding => holding.Count), shelf.OnHand(number) - kept);
        if (free < count)
            return Result<ValueList<Pick>>.Bad(
                Short(shelf, number, count, Math.Max(0, free), all.Sum(holding => holding.Count), kept, all.Count > fit.Count));
        var picks = new List<Pick>();
        foreach (var holding in fit)
        {
            var taken = Math.Min(holding.Count, count - picks.Sum(pick => pick.Count));
            if (taken > 0)
                picks.Add(new(holding.Batch, taken));
        }

        return Result<ValueList<Pick>>.Good(picks.ToValueList());
    }

    private static Fault Short(Shelf shelf, string number, int count, int free, int there, int kept, bool unfit)
    {
        var found = $"{count} wanted, {free} can be taken ({there} on the shelf{(kept > 0 ? $", {kept} kept for other places" : "")}{(unfit ? ", some too old or in another condition" : "")})";
        var others = new Family(shelf.Numbers).ServingFor(number).Where(other => other.Number != number && Free(shelf, other.Number) > 0)
            .Select(other => other.Number).ToList();
        return new($"number {number}", found, others.Count > 0 ? $"What serves as well and is there: {string.Join(", ", others)}."
            : there == 0
            ? NearNames.Ask(number, shelf.Holdings.Select(holding => holding.Batch.Number),
                "Order it, or say what is there: refettle stock count.")
            : "Take fewer, free a reservation, or count again.");
    }
}
