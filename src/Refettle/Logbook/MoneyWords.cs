namespace Refettle.Logbook;

/// <summary>Money in a line of the log.</summary>
public static class MoneyWords
{
    public static string Of(Receipt receipt) =>
        $"{(receipt.IsRefund ? "Came back" : "Spent")}: {receipt.Amount} for {receipt.For}{(receipt.About is null ? "" : $" ({receipt.About})")}";
}
