namespace Refettle.Logbook;

/// <summary>Whether a receipt may be written into a car's log.</summary>
internal static class MoneyCheck
{
    private const decimal MostMoney = 10_000_000;
    private const int MostWords = 500;
    private const string Job = "job ";

    public static IEnumerable<Fault> Spent(CarHistory history, Receipt receipt, Func<string, IEnumerable<Fault>> thing)
    {
        if (receipt.Amount.Amount is <= 0 or > MostMoney)
            yield return new("money", $"an amount of {receipt.Amount}",
                $"Give more than 0, up to {MostMoney}; money that came back is marked as a refund.");
        if (string.IsNullOrWhiteSpace(receipt.For) || receipt.For.Length > MostWords)
            yield return new("money", "nothing is said about what it was for, or too much", $"Say it in 1 to {MostWords} characters.");
        if (receipt.Attachment is { Length: > MostWords })
            yield return new("receipt", $"its reference has {receipt.Attachment.Length} characters", $"Keep it to {MostWords}.");
        foreach (var fault in About(history.Car, receipt.About, thing).Concat(Settles(history, receipt.Settles)))
            yield return fault;
    }

    private static IEnumerable<Fault> About(Car car, string? about, Func<string, IEnumerable<Fault>> thing) => about switch
    {
        null => [],
        _ when about.StartsWith(Job, StringComparison.Ordinal) => JobCheck.Known(car, about[Job.Length..]),
        _ => thing(about),
    };

    private static IEnumerable<Fault> Settles(CarHistory history, Guid? settles)
    {
        if (settles is { } entry && history.Line(entry) is not { Standing: Standing.InForce, Happening: Ordered or SentOut })
            yield return new("receipt", $"entry {entry} is no order and no outside work in this car's log",
                "Take the mark from refettle orders; a receipt belongs into the log in which the order is.");
    }
}
