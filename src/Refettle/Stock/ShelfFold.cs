using Refettle.Logbook;

namespace Refettle.Stock;

/// <summary>Makes the one shelf from the logs of all cars.</summary>
public static class ShelfFold
{
    /// <summary>It depends on the sets of entries alone: in which order they arrived, and in which order the
    /// cars are named, means nothing.</summary>
    public static Shelf Of(IEnumerable<CarHistory> cars)
    {
        var histories = cars.OrderBy(history => history.Car.Id, StringComparer.Ordinal).ToList();
        var lines = histories.SelectMany(Lines).ToList();
        var book = new OrderBook(lines);
        var accounts = Accounts(lines, book);
        var catalogue = new Catalogue(lines);
        return new()
        {
            Accounts = accounts,
            Holdings = accounts.Where(account => account.Place == StockPlace.Shelf)
                .Select(account => new Holding(account.Batch, account.Count))
                .OrderBy(holding => holding.Batch.Number, StringComparer.Ordinal)
                .ThenBy(holding => catalogue.UseBy(holding.Batch) ?? DateOnly.MaxValue).ThenBy(holding => holding.Batch.Condition)
                .ThenBy(holding => holding.Batch.Made ?? DateOnly.MinValue).ToValueList(),
            Claims = ClaimFold.Of(histories, lines),
            Numbers = catalogue.Numbers,
            Lists = catalogue.Lists,
            Orders = book.Orders,
            Outside = book.Outside,
            Tried = lines.Select(line => line.Happening).OfType<TrialFitted>().OrderBy(tried => tried.On).ThenBy(tried => tried.Order)
                .ThenBy(tried => tried.Number, StringComparer.Ordinal).ThenBy(tried => tried.ToString(), StringComparer.Ordinal)
                .ToValueList(),
            Debts = Debts(lines, accounts),
            Faults = [.. Short(accounts), .. book.Faults, .. catalogue.Faults],
        };
    }

    private static IEnumerable<StockLine> Lines(CarHistory history) =>
        from line in history.Lines
        where line.Standing == Standing.InForce && line.Happening is StockHappening
        select new StockLine(history.Car.Id, line.Entry.Id, (StockHappening)line.Happening!);

    private static ValueList<Account> Accounts(List<StockLine> lines, OrderBook book)
    {
        var counts = new Dictionary<(Batch, StockPlace), int>();
        foreach (var posting in lines.SelectMany(line => Postings.Of(line.Entry, line.Happening, book.SupplierOf, book.SentFrom)))
            counts[(posting.Batch, posting.Place)] = counts.GetValueOrDefault((posting.Batch, posting.Place)) + posting.Count;
        return counts.Where(count => count.Value != 0).Select(count => new Account(count.Key.Item1, count.Key.Item2, count.Value))
            .OrderBy(account => account.Batch.Number, StringComparer.Ordinal).ThenBy(account => account.Batch.Condition)
            .ThenBy(account => account.Batch.Made ?? DateOnly.MinValue).ThenBy(account => account.Batch.UseBy ?? DateOnly.MinValue)
            .ThenBy(account => account.Place.Kind).ThenBy(account => account.Place.Name, StringComparer.Ordinal).ToValueList();
    }

    private static IEnumerable<Fault> Short(ValueList<Account> accounts)
    {
        foreach (var account
            in accounts.Where(account => account.Count < 0 && account.Place.Kind is StockPlaceKind.Shelf or StockPlaceKind.Away))
        {
            yield return account.Place == StockPlace.Shelf
                ? new($"number {account.Batch.Number}",
                    $"{-account.Count} more left the shelf than were on it ({account.Batch.Condition.ToString().ToLowerInvariant()})",
                    "Two devices may have taken the same pieces. Count, and say what is there.")
                : new($"number {account.Batch.Number}", $"{-account.Count} more came back than were sent out",
                    "Look at the list of what left.");
        }
    }

    /// <summary>A car is owed what was taken off it for another and is not on it again.</summary>
    private static ValueList<Debt> Debts(List<StockLine> lines, ValueList<Account> accounts)
    {
        var missing = accounts.Where(account => account.Place.Kind == StockPlaceKind.Car).GroupBy(account => account.Place)
            .ToDictionary(place => place.Key, place => -place.Sum(account => account.Count));
        var debts = new List<Debt>();
        foreach (var robbed in lines.Select(line => line.Happening).OfType<PiecesMoved>()
            .Where(moved => moved.From.Position() is { } from && moved.To.Position() is { } to && from.Car != to.Car)
            .GroupBy(moved => (moved.From, To: moved.To.Position()!.Value.Car, moved.Batch.Number)))
        {
            var owed = Math.Min(robbed.Sum(moved => moved.Count), missing.GetValueOrDefault(robbed.Key.From));
            if (owed <= 0 || robbed.Key.From.Position() is not { } from)
                continue;
            missing[robbed.Key.From] -= owed;
            debts.Add(new(from.Car, from.Thing, robbed.Key.To, robbed.Key.Number, owed));
        }

        return debts.ToValueList();
    }
}
