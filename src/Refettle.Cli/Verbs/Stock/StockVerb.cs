using System.CommandLine;
using Refettle.Cli.Views;
using Refettle.Stock;

namespace Refettle.Cli.Verbs.Stock;

internal static class StockVerb
{
    public static Command Make(Desk desk)
    {
        var number = new Argument<string?>("number") { Description = "One part number; nothing for all.", Arity = ArgumentArity.ZeroOrOne };
        var find = new Option<string?>("--find") { Description = "Only numbers and names with this in them." };
        var command = new Command("stock",
            "What is on the shelf of all cars together; with a further word, what is done at the shelf.") { number, find }
            .Answers(desk,
                parsed => OpenShelf.With(desk, parsed, shelf => Answer(shelf, parsed.GetValue(number), parsed.GetValue(find) ?? "")));
        foreach (var sub
            in (Command[])[CatalogueVerbs.Describe(desk), CatalogueVerbs.Assign(desk), ImportVerb.Make(desk), .. ShelfVerbs.All(desk)])
            command.Add(sub);
        return command;
    }

    private static Reply Answer(OpenShelf open, string? number, string find)
    {
        if (number is null)
        {
            var lines = ShelfLine.All(open.Shelf, open.Today);
            var shown = lines.Where(line => line.Matches(find)).ToValueList();
            return new(StockView.Of(open.Shelf, shown), new { lines = shown, debts = open.Shelf.Debts, faults = open.Shelf.Faults })
            { Faults = open.Shelf.Faults };
        }

        var asked = PartNumber.Canonical(number);
        return ShelfLine.One(open.Shelf, asked, open.Today) is { } known
            ? new(StockView.One(open.Shelf, known),
                new
                {
                    line = known,
                    known = open.Shelf.Number(asked),
                    serving = new Family(open.Shelf.Numbers).ServingFor(asked),
                    offers = ListOffer.Of(open.Shelf, asked),
                    places = open.Shelf.Accounts.Where(account => account.Batch.Number == asked).ToValueList()
                })
            : Reply.Bad([new($"number {asked}", "nothing is known of it",
                NearNames.Ask(asked,
                    ShelfLine.All(open.Shelf, open.Today).Select(line => line.Number)
                        .Concat(open.Shelf.Lists.SelectMany(list => list.Offers).Select(offer => offer.Number)).Distinct(),
                        "refettle stock lists what is known."))]);
    }
}
