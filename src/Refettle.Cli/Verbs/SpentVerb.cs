using System.CommandLine;
using Refettle.Cli.Verbs.Stock;
using Refettle.Logbook;

namespace Refettle.Cli.Verbs;

internal static class SpentVerb
{
    private static readonly Dictionary<string, SpendKind> Kinds = new()
    {
        ["parts"] = SpendKind.Parts,
        ["consumables"] = SpendKind.Consumables,
        ["outside-work"] = SpendKind.OutsideWork,
        ["tools"] = SpendKind.Tools,
        ["other"] = SpendKind.Other,
    };

    public static Command Make(Desk desk)
    {
        var amount = new Argument<decimal>("amount") { Description = "How much, in the car's currency." };
        var what = new Argument<string>("for") { Description = "What for." };
        var kind = new Option<string>("--kind") { Description = $"{string.Join(", ", Kinds.Keys)}.", DefaultValueFactory = _ => "other" };
        var about = new Option<string>("--about") { Description = "What it is about: \"job x\", \"part x\" …; by default the car." };
        var settles = new Option<string>("--settles")
        { Description = "The order or outside work that it pays, by its mark: then only this counts.", HelpName = "mark" };
        var receipt = new Option<string>("--receipt")
        { Description = "The receipt: the hash of a photo in the log, or where the paper lies." };
        var refund = new Option<bool>("--refund") { Description = "The money came back." };
        var on = StockWords.Day(desk, "--on", "When; by default today.");
        return new Command("spent", "Records money that was paid, or came back.") { amount, what, kind, about, settles, receipt, refund,
            on }
            .Answers(desk, parsed => Kinds.TryGetValue(parsed.GetRequiredValue(kind), out var known)
                ? OpenShelf.With(desk, parsed, shelf => Reply.To(Settled(shelf, parsed.GetValue(settles)), paid => Record(shelf, new(
                    new(parsed.GetValue(amount)), parsed.GetRequiredValue(what).Trim(), known, parsed.GetValue(about), paid,
                    parsed.GetValue(receipt), parsed.GetValue(on) ?? shelf.Today, parsed.GetValue(refund)))))
                : Reply.Bad([new("--kind", $"\"{parsed.GetValue(kind)}\" is not one",
                    NearNames.Ask(parsed.GetRequiredValue(kind), Kinds.Keys, $"Write {string.Join(", ", Kinds.Keys)}."))]));
    }

    private static Reply Record(OpenShelf shelf, Receipt receipt) => shelf.Desk.Record(shelf.Open, [new MoneySpent(receipt)], now =>
    {
        var books = LedgerVerb.Books(shelf, now);
        return Reply.Said($"{MoneyWords.Of(receipt)}. Spent so far: {books.Spent:0.00} {books.Currency}.",
            new { car = now.Car.Id, mark = LogVerb.Mark(now.Entries[now.Entries.Count - 1].Id), receipt, spent = books.Spent });
    });

    private static Result<Guid?> Settled(OpenShelf shelf, string? mark)
    {
        if (mark is null)
            return Result<Guid?>.Good(null);
        var known = shelf.Shelf.Orders.Select(order => (order.Id, Who: order.Supplier, IsOpen: order.IsOpen))
            .Concat(shelf.Shelf.Outside.Select(work => (work.Id, Who: work.To, IsOpen: work.IsAway)));
        var found = StockWords.Find(mark, known, one => one.Id, one => one.Who, one => one.IsOpen, "order");
        return found.IsGood ? Result<Guid?>.Good(found.Value.Id) : Result<Guid?>.Bad(found.Faults);
    }
}
