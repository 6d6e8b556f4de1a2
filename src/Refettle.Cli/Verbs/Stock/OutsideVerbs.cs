using System.CommandLine;
using Refettle.Logbook;
using Refettle.Stock;

namespace Refettle.Cli.Verbs.Stock;

/// <summary><c>orders send</c> and <c>orders back</c>: what leaves for an outside shop, and the check on return.</summary>
internal static class OutsideVerbs
{
    public static IEnumerable<Command> All(Desk desk) => [Send(desk), Back(desk)];

    private static Command Send(Desk desk)
    {
        var shop = new Argument<string>("shop") { Description = "Who does the work." };
        var things = new Argument<string[]>("thing=count")
        { Description = "What leaves: 'part x' of the car, a part number on the shelf, or words.", Arity = ArgumentArity.OneOrMore };
        var work = new Option<string>("--work") { Description = "What is to be done.", Required = true };
        var (on, promised) =
            (StockWords.Day(desk, "--on", "When; by default today."), StockWords.Day(desk, "--promised", "The day it is promised back."));
        var price = new Option<decimal?>("--price") { Description = "What it will cost." };
        var photos = new Option<string[]>("--photo")
        { Description = "Photos of what leaves, by file name.", AllowMultipleArgumentsPerToken = true };
        return new Command("send", "Things leave for an outside shop: the list is kept for the check on return.") { shop, things, work, on,
            promised, price, photos }
            .Answers(desk,
                parsed => OpenShelf.With(desk, parsed, open => Reply.To(StockWords.Things(parsed.GetRequiredValue(things)), sent =>
                Reply.To(Items(open, sent, (parsed.GetValue(photos) ?? []).ToValueList()), items =>
                    open.Record([new SentOut(parsed.GetRequiredValue(shop).Trim(), parsed.GetRequiredValue(work), items,
                        parsed.GetValue(on) ?? open.Today, parsed.GetValue(promised),
                        parsed.GetValue(price) is { } cost ? new Money(cost) : null)],
                        $"Sent to {parsed.GetRequiredValue(shop)}: {string.Join(", ", items.Select(item => $"{item.Count} × {item.What}"))}.")))));
    }

    private static Command Back(Desk desk)
    {
        var mark = new Argument<string>("work") { Description = "Its mark as refettle orders shows it, the shop's name, or last." };
        var things = new Argument<string[]>("thing=count")
        { Description = "What came back; nothing for all that is away.", Arity = ArgumentArity.ZeroOrMore };
        var finding = new Option<string>("--found") { Description = "What the check found: count, function, defects.", Required = true };
        var bad = new Option<bool>("--bad") { Description = "It cannot be used as it is." };
        var now = StockWords.Condition();
        var on = StockWords.Day(desk, "--on", "When; by default today.");
        return new Command("back", "Things came back from an outside shop and were checked.") { mark, things, finding, bad, now, on }
            .Answers(desk, parsed => OpenShelf.With(desk, parsed, open => Reply.To(StockWords.Things(parsed.GetValue(things)), back =>
                Reply.To(StockWords.Find(parsed.GetRequiredValue(mark), open.Shelf.Outside, work => work.Id, work => work.To,
                    work => work.IsAway, "outside work"), found =>
                    open.Record(OrderWork.CameBack(found, back, parsed.GetRequiredValue(finding), !parsed.GetValue(bad),
                        parsed.GetValue(now) ?? PieceCondition.Refurbished, parsed.GetValue(on) ?? open.Today), $"Back from {found.To}.",
                        found.Car)))));
    }

    /// <summary>What is a part number on the shelf is picked from it; what is a part of the car must be there; the rest is words.</summary>
    private static Result<ValueList<SentItem>> Items(OpenShelf open, ValueList<NumberCount> sent, ValueList<string> photos)
    {
        var (items, faults) = (new List<SentItem>(), OrderWork.Away(open.Shelf, open.Open.Car, sent).ToList());
        foreach (var (what, count) in sent)
        {
            var number = PartNumber.Canonical(what);
            if (open.Shelf.OnHand(number) > 0)
            {
                var picks = Picking.Of(open.Shelf, number, count, DateOnly.MinValue);
                faults.AddRange(picks.Faults);
                items.AddRange(picks.IsGood
                    ? picks.Value
                        .Select((pick, place) => new SentItem(place == 0 ? number : $"{number} ({place + 1})", pick.Count, pick.Batch,
                            photos))
                    : []);
            }
            else if (what.StartsWith("part ", StringComparison.Ordinal) && Positions.Unknown(open.Open.Car, what) is { } unknown)
                faults.Add(unknown);
            else
                items.Add(new(what, count, null, photos));
        }

        return faults.Count > 0 ? Result<ValueList<SentItem>>.Bad(faults) : Result<ValueList<SentItem>>.Good(items.ToValueList());
    }
}
