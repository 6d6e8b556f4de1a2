using Refettle.Stock;

namespace Refettle.Ledger;

/// <summary>What an order costs, has cost, will cost.</summary>
internal static class OrderMoney
{
    /// <param name="paid">By receipts, less refunds; null without any. Then what arrived and did not go
    /// back counts as paid, at its price.</param>
    public static IEnumerable<MoneyLine> Of(Order order, Belonging belongs, decimal? paid) =>
        paid is { } settled ? Settled(order, belongs, settled) : ByPrice(order, belongs);

    private static IEnumerable<MoneyLine> ByPrice(Order order, Belonging belongs)
    {
        foreach (var line in order.Lines)
            yield return new(order.Id, order.On, $"{order.Supplier}: {line.Line.Number}", SpendKind.Parts,
                belongs.OfNumber(line.Line.Number), Each(line) * Kept(line), Each(line) * line.ToCome, line.Line.Each is not null);
        var carriage = order.Carriage?.Amount ?? 0;
        var hasCome = order.Lines.Any(line => line.Arrived > 0);
        if (carriage > 0 && (hasCome || order.IsOpen))
            yield return new(order.Id, order.On, $"{order.Supplier}: carriage", SpendKind.Parts, Job(order, belongs),
                hasCome ? carriage : 0, hasCome ? 0 : carriage);
    }

    /// <summary>What is paid stands in the receipts: here is only what they do not cover while pieces are to come.</summary>
    private static IEnumerable<MoneyLine> Settled(Order order, Belonging belongs, decimal paid)
    {
        var worth = order.Lines.Sum(line => Each(line) * (Kept(line) + line.ToCome)) + (order.Carriage?.Amount ?? 0);
        var owed = order.IsOpen ? Math.Max(0, worth - paid) : 0;
        if (owed > 0)
            yield return new(order.Id, order.On, $"{order.Supplier}: not covered by receipts", SpendKind.Parts, Job(order, belongs), 0,
                owed, order.Lines.All(line => line.Line.Each is not null));
    }

    private static string? Job(Order order, Belonging belongs) =>
        Belonging.ToOne(order.Lines.Select(line => belongs.OfNumber(line.Line.Number)));

    private static int Kept(OrderedLine line) => Math.Max(0, line.Arrived - line.SentBack);

    private static decimal Each(OrderedLine line) => line.Line.Each?.Amount ?? 0;
}
