using System.CommandLine;
using Refettle.Cli.Views;
using Refettle.Logbook;
using Refettle.Stock;

namespace Refettle.Cli.Verbs.Stock;

/// <summary><c>orders</c>: what is to come, and what is done about it.</summary>
internal static class OrdersVerb
{
    public static Command Make(Desk desk)
    {
        var all = new Option<bool>("--all") { Description = "Also what is done with." };
        var command = new Command("orders", "What is ordered and what is away; with a further word, what is done about it.") { all }
            .Answers(desk, parsed => OpenShelf.With(desk, parsed, open =>
            {
                var orders = open.Shelf.Orders.Where(order => order.IsOpen || parsed.GetValue(all)).ToValueList();
                var outside = open.Shelf.Outside.Where(work => work.IsAway || parsed.GetValue(all)).ToValueList();
                return new(OrdersView.Of(open.Shelf, id => open.Car(id).Car, orders, outside, open.Today), new { orders, outside })
                { Faults = open.Shelf.Faults };
            }));
        foreach (var sub
            in (Command[])[Place(desk), Promise(desk), Arrive(desk), Cancel(desk), Return(desk), Tried(desk), .. OutsideVerbs.All(desk)])
            command.Add(sub);
        return command;
    }

    private static Command Place(Desk desk)
    {
        var supplier = new Argument<string>("supplier") { Description = "Who sells them." };
        var lines = new Argument<string[]>("number=count")
        {
            Description = "What is ordered, with the price of one after @ where it is known: 4410-22=4@3.20.",
            Arity = ArgumentArity.OneOrMore
        };
        var (on, promised) =
            (StockWords.Day(desk, "--on", "When; by default today."), StockWords.Day(desk, "--promised", "The day it is promised for."));
        var days = new Option<int?>("--return-within")
        { Description = "Days after arrival within which it may go back.", HelpName = "days" };
        var carriage = new Option<decimal?>("--carriage") { Description = "What the delivery costs." };
        var condition = StockWords.Condition();
        return new Command("place", "Records that an order was placed.") { supplier, lines, on, promised, days, carriage, condition }
            .Answers(desk,
                parsed => OpenShelf.With(desk, parsed,
                    open => Reply.To(Lines(parsed.GetRequiredValue(lines), parsed.GetValue(condition) ?? PieceCondition.New), read =>
                open.Record([new Ordered(parsed.GetRequiredValue(supplier).Trim(), read, parsed.GetValue(on) ?? open.Today,
                    parsed.GetValue(promised), parsed.GetValue(days), parsed.GetValue(carriage) is { } cost ? new Money(cost) : null)],
                    $"Ordered at {parsed.GetRequiredValue(supplier)}: {string.Join(", ", read.Select(line => $"{line.Count} × {line.Number}"))}."))));
    }

    private static Command Promise(Desk desk)
    {
        var order = Mark();
        var day = StockWords.Day(desk, "--for", "The day it is promised for now.");
        day.Required = true;
        return new Command("promise", "The supplier named another day.") { order, day }
            .Answers(desk, parsed => With(desk, parsed, order, (open, found) =>
                open.Record([new OrderPromised(found.Id, parsed.GetValue(day)!.Value)],
                    $"The order at {found.Supplier} is promised for {parsed.GetValue(day):yyyy-MM-dd}.", found.Car)));
    }

    private static Command Arrive(Desk desk)
    {
        var (order, lines) = (Mark(), Some("What came; nothing for all that was still to come."));
        var on = StockWords.Day(desk, "--on", "When; by default today.");
        var made = StockWords.Day(desk, "--made", "When rubber was made, as marked on it.");
        var useBy = StockWords.Day(desk, "--use-by", "The last day it may be fitted, as marked on it.");
        var more = new Option<bool>("--more") { Description = "More came than was ordered, and it stays." };
        return new Command("arrived", "All or part of an order came.") { order, lines, on, made, useBy, more }
            .Answers(desk, parsed => With(desk, parsed, order, (open, found) => Reply.To(StockWords.Counts(parsed.GetValue(lines)), came =>
                open.Record(Told(parsed.GetValue(more))(open.Shelf, found, came, parsed.GetValue(on) ?? open.Today, parsed.GetValue(made),
                    parsed.GetValue(useBy)), $"From {found.Supplier} onto the shelf.", found.Car))));
    }

    private static Func<Shelf, Order, ValueList<NumberCount>, DateOnly, DateOnly?, DateOnly?, Result<Happening>> Told(bool withMore) =>
        withMore ? OrderWork.ArrivedWithMore : OrderWork.Arrived;

    private static Command Cancel(Desk desk)
    {
        var (order, lines) = (Mark(), Some("What is cancelled; nothing for all that is still to come."));
        return new Command("cancel", "What has not come yet is cancelled.") { order, lines }
            .Answers(desk, parsed => With(desk, parsed, order, (open, found) => Reply.To(StockWords.Counts(parsed.GetValue(lines)), gone =>
                open.Record(OrderWork.Cancelled(found, gone), $"Cancelled at {found.Supplier}.", found.Car))));
    }

    private static Command Return(Desk desk)
    {
        var order = Mark();
        var lines = new Argument<string[]>("number=count") { Description = "What goes back.", Arity = ArgumentArity.OneOrMore };
        var on = StockWords.Day(desk, "--on", "When; by default today.");
        var why = new Option<string?>("--why") { Description = "The reason." };
        return new Command("return", "Pieces go back to the supplier.") { order, lines, on, why }
            .Answers(desk, parsed => With(desk, parsed, order, (open, found) => Reply.To(StockWords.Counts(parsed.GetValue(lines)), back =>
                open.Record(OrderWork.SentBack(open.Shelf, found, back, parsed.GetValue(on) ?? open.Today, parsed.GetValue(why)),
                    $"Sent back to {found.Supplier}.", found.Car))));
    }

    private static Command Tried(Desk desk)
    {
        var (order, number) = (Mark(), StockWords.Counted());
        var misfit = new Option<bool>("--misfit") { Description = "It does not fit: send it back in time." };
        var says = new Option<string?>("--says") { Description = "What was seen." };
        return new Command("tried", "Pieces were held up to the car before they can no longer go back.") { order, number, misfit, says }
            .Answers(desk,
                parsed => With(desk, parsed, order,
                    (open, found) => Reply.To(StockWords.Counts([parsed.GetRequiredValue(number)]),
                        one => !found.Lines.Any(line => line.Arrivals.Any(arrival => arrival.Number == one[0].Number))
                ? Reply.Bad([new($"order at {found.Supplier}", $"no {one[0].Number} came of it",
                    NearNames.Ask(one[0].Number, found.Lines.SelectMany(line => line.Arrivals).Select(arrival => arrival.Number),
                        "refettle orders --all shows what came."))])
                : open.Record([new TrialFitted(found.Id, one[0].Number, one[0].Count, !parsed.GetValue(misfit), parsed.GetValue(says),
                    open.Today)],
                    $"{one[0].Count} × {one[0].Number}: {(parsed.GetValue(misfit) ? "does not fit; it may go back" : "fits")}.",
                    found.Car))));
    }

    private static Reply With(Desk desk, ParseResult parsed, Argument<string> mark, Func<OpenShelf, Order, Reply> answer) =>
        OpenShelf.With(desk, parsed, open =>
        Reply.To(StockWords.Find(parsed.GetRequiredValue(mark), open.Shelf.Orders, order => order.Id, order => order.Supplier,
            order => order.IsOpen, "order"), found => answer(open, found)));

    private static Argument<string> Mark() =>
        new("order") { Description = "Its mark as refettle orders shows it, the supplier's name, or last." };

    private static Argument<string[]> Some(string says) => new("number=count") { Description = says, Arity = ArgumentArity.ZeroOrMore };

    private static Result<ValueList<OrderLine>> Lines(string[] texts, PieceCondition condition)
    {
        var prices = texts.Select(text => text.Split('@', 2)).ToList();
        var counts = StockWords.Counts(prices.Select(pair => pair[0]));
        var faults = prices.Where(pair => pair.Length == 2
            && !decimal.TryParse(pair[1], System.Globalization.NumberStyles.AllowDecimalPoint,
                System.Globalization.CultureInfo.InvariantCulture, out _))
            .Select(pair => new Fault(pair[0], $"\"{pair[1]}\" is not a price", "Write it with a point: 4410-22=4@3.20."))
            .Concat(counts.Faults).ToList();
        return faults.Count > 0
            ? Result<ValueList<OrderLine>>.Bad(faults)
            : Result<ValueList<OrderLine>>.Good(counts.Value.Zip(prices, (count, pair) =>
            new OrderLine(count.Number, count.Count,
                pair.Length == 2 ? new Money(decimal.Parse(pair[1], System.Globalization.CultureInfo.InvariantCulture)) : null,
                condition)).ToValueList());
    }
}
