using System.CommandLine;
using Refettle.Logbook;
using Refettle.Stock;

namespace Refettle.Cli.Verbs.Stock;

/// <summary>What is done at the shelf: count, keep, fit, rob, discard, open, make.</summary>
internal static class ShelfVerbs
{
    public static IEnumerable<Command> All(Desk desk) =>
        [Count(desk), Reserve(desk), Want(desk), Fit(desk), TakeOff(desk), Discard(desk), Open(desk), Make(desk)];

    private static Command Count(Desk desk)
    {
        var (number, condition) = (StockWords.Counted(), StockWords.Condition());
        var made = StockWords.Day(desk, "--made", "When rubber was made.");
        var useBy = StockWords.Day(desk, "--use-by", "The last day it may be fitted.");
        return new Command("count", "So many are on the shelf, by count; the difference is recorded.") { number, condition, made, useBy }
            .Answers(desk, parsed => Counted(desk, parsed, number, (open, one) =>
            {
                var batch = new Batch(one.Number, parsed.GetValue(condition) ?? PieceCondition.New, parsed.GetValue(made),
                    parsed.GetValue(useBy));
                var work = ShelfWork.Counted(open.Shelf, batch, one.Count, open.Today);
                return work.Count == 0
                    ? Reply.Said($"{one.Count} × {one.Number}: as recorded.", new { says = "as recorded" })
                    : open.Record(work, $"{one.Count} × {one.Number} are on the shelf.");
            }));
    }

    private static Command Reserve(Desk desk)
    {
        var number = StockWords.Counted();
        var thing = new Option<string>("--for") { Description = "'part x' or 'joint x' of the car.", Required = true };
        return new Command("reserve", "Keeps pieces for a part or joint of the car; striking the entry frees them.") { number, thing }
            .Answers(desk, parsed => Counted(desk, parsed, number, (open, one) =>
                open.Record(ShelfWork.Reserved(open.Shelf, one.Number, one.Count, parsed.GetRequiredValue(thing)),
                    $"{one.Count} × {one.Number} kept for {parsed.GetRequiredValue(thing)}.")));
    }

    private static Command Want(Desk desk)
    {
        var thing = new Argument<string>("thing") { Description = "'part x' or 'joint x' of the car." };
        var count = new Argument<int>("count") { Description = "Pieces; 0 when none are wanted any more." };
        return new Command("want", "New pieces for a part or joint go into the basket, whatever the plan uses up.") { thing, count }
            .Answers(desk,
                parsed => OpenShelf.With(desk, parsed,
                    open => open.Record([new PiecesWanted(parsed.GetRequiredValue(thing), parsed.GetRequiredValue(count))],
                parsed.GetRequiredValue(count) == 0
                    ? $"No new pieces are wanted for {parsed.GetRequiredValue(thing)} any more."
                    : $"{parsed.GetRequiredValue(count)} new wanted for {parsed.GetRequiredValue(thing)}: in the basket.")));
    }

    private static Command Fit(Desk desk)
    {
        var number = StockWords.Counted();
        var thing = new Option<string>("--on") { Description = "'part x' or 'joint x' of the car.", Required = true };
        var broke = new Option<int>("--broke") { Description = "Pieces that broke in doing so." };
        return new Command("fit", "Pieces from the shelf go onto the car, what goes off first first.") { number, thing, broke }
            .Answers(desk, parsed => Counted(desk, parsed, number, (open, one) =>
            {
                var on = parsed.GetRequiredValue(thing);
                return Positions.Unknown(open.Open.Car, on) is { } fault ? Reply.Bad([fault])
                    : open.Record(ShelfWork.Fitted(open.Shelf, one.Number, one.Count, Math.Max(0, parsed.GetValue(broke)),
                        (open.Open.Car.Id, on), open.Today), $"{one.Count} × {one.Number} fitted on {on}.");
            }));
    }

    private static Command TakeOff(Desk desk)
    {
        var number = StockWords.Counted();
        var thing = new Option<string>("--off") { Description = "'part x' or 'joint x' it comes off.", Required = true };
        var to = new Option<string?>("--for")
        { Description = "The part or joint of the car that it goes onto at once; by default the shelf." };
        var donor = new Option<string?>("--from") { Description = "The car it is taken from; by default the car itself." };
        var condition = StockWords.Condition();
        return new Command("take", "Pieces come off a car: onto the shelf, or onto another car, which then owes them.") { number, thing,
            donor, to, condition }
            .Answers(desk, parsed => Counted(desk, parsed, number, (open, one) =>
            {
                var (from, off, on) = (parsed.GetValue(donor) ?? open.Open.Car.Id, parsed.GetRequiredValue(thing), parsed.GetValue(to));
                var giver = open.Cars.FirstOrDefault(car => car.Car.Id == from);
                ValueList<Fault?> faults = giver is null
                    ? [new Fault($"car {from}", "it is not in the store",
                        NearNames.Ask(from, open.Cars.Select(car => car.Car.Id), "refettle cars lists what is there."))]
                    : [Positions.Unknown(giver.Car, off), on is null ? null : Positions.Unknown(open.Open.Car, on)];
                if (faults.OfType<Fault>().ToList() is { Count: > 0 } wrong)
                    return Reply.Bad(wrong);
                var place = on is null ? StockPlace.Shelf : StockPlace.On(open.Open.Car.Id, on);
                return open.Record([new PiecesMoved(new(one.Number, parsed.GetValue(condition) ?? PieceCondition.Used), one.Count,
                    StockPlace.On(from, off), place, open.Today, null)],
                    $"{one.Count} × {one.Number} off {from} {off}, {(on is null ? "onto the shelf" : $"onto {open.Open.Car.Id} {on}")}.");
            }));
    }

    private static Command Discard(Desk desk)
    {
        var (number, condition) = (StockWords.Counted(), StockWords.Condition());
        var broken = new Option<bool>("--broken") { Description = "It broke." };
        var why = new Option<string?>("--why") { Description = "The reason." };
        return new Command("discard", "Pieces leave the shelf for good.") { number, condition, broken, why }
            .Answers(desk, parsed => Counted(desk, parsed, number, (open, one) => open.Record(
                ShelfWork.Discarded(open.Shelf, one.Number, one.Count, parsed.GetValue(condition), parsed.GetValue(broken), open.Today,
                    parsed.GetValue(why)), $"{one.Count} × {one.Number} discarded.")));
    }

    private static Command Open(Desk desk)
    {
        var number = StockWords.Counted();
        return new Command("open", "A bought kit is opened: its contents go onto the shelf.") { number }
            .Answers(desk,
                parsed => Counted(desk, parsed, number,
                    (open, one) => open.Record(ShelfWork.Opened(open.Shelf, one.Number, one.Count, open.Today),
                        $"{one.Count} × {one.Number} opened.")));
    }

    private static Command Make(Desk desk)
    {
        var number = StockWords.Counted();
        return new Command("make", "Pieces are made up from others on the shelf.") { number }
            .Answers(desk,
                parsed => Counted(desk, parsed, number,
                    (open, one) => open.Record(ShelfWork.MadeUp(open.Shelf, one.Number, one.Count, open.Today),
                        $"{one.Count} × {one.Number} made up.")));
    }

    private static Reply Counted(Desk desk, ParseResult parsed, Argument<string> number, Func<OpenShelf, NumberCount, Reply> answer) =>
        OpenShelf.With(desk, parsed, open => Reply.To(StockWords.Counts([parsed.GetRequiredValue(number)]), one => one[0].Count < 0
            ? Reply.Bad([new(one[0].Number, "fewer than none", "Give 0 or more.")]) : answer(open, one[0])));
}
