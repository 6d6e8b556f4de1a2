using System.CommandLine;
using System.Globalization;
using Refettle.Logbook;
using Refettle.Stock;
using Refettle.Stuck;

namespace Refettle.Cli.Verbs.Stock;

/// <summary>The shelf with the car that is spoken of.</summary>
internal sealed record OpenShelf(Desk Desk, OpenCar Open, ValueList<OpenCar> Cars, Shelf Shelf, DateOnly Today)
{
    /// <summary>Answers with the shelf of all cars.</summary>
    public static Reply With(Desk desk, ParseResult parsed, Func<OpenShelf, Reply> answer) => desk.WithCar(parsed, open =>
    {
        var cars = desk.All(open.Logbook);
        return answer(new(desk, open, cars, ShelfFold.Of(cars.Select(car => car.History)), desk.Today));
    });

    /// <summary>What someone says is ready, and what the shelf has for a joint. A car from a sheet has no shelf.</summary>
    public static AtHand AtHand(Desk desk, ParseResult parsed, Car car, string joint, LadderSet ladders, AtHand said)
    {
        var shelf = desk.Shelf(parsed, car);
        return shelf is null
            ? said
            : InHand.With(said, car, shelf, car.Structure.Joints.First(one => one.Id == joint), ladders, desk.Today);
    }

    public OpenCar Car(string id) => Cars.First(car => car.Car.Id == id);

    /// <summary>Writes into the log of the car that is spoken of, or of another.</summary>
    public Reply Record(IReadOnlyList<Happening> happenings, string says, string? car = null) =>
        Desk.Record(car is null ? Open : Car(car), happenings, now => Told(now, says));

    public Reply Record(Result<ValueList<Happening>> work, string says) =>
        Reply.To(work, happenings => Record(happenings, says));

    /// <summary>Writes what concerns an order or outside work into the log that has it.</summary>
    public Reply Record(Result<Happening> work, string says, string car) => Reply.To(work, happening => Record([happening], says, car));

    private Reply Told(OpenCar now, string says)
    {
        var shelf = ShelfFold.Of(Cars.Select(car => car.Car.Id == now.Car.Id ? now.History : car.History));
        return Reply.Said(says,
            new
            {
                car = now.Car.Id,
                entry = now.Entries[now.Entries.Count - 1].Id,
                mark = LogVerb.Mark(now.Entries[now.Entries.Count - 1].Id),
                says,
                onShelf = shelf.Holdings
            }) with
        { Faults = shelf.Faults };
    }
}

/// <summary>Reads what is typed about stock.</summary>
internal static class StockWords
{
    /// <summary><c>number</c> or <c>number=count</c>, many.</summary>
    public static Result<ValueList<NumberCount>> Counts(IEnumerable<string>? texts) =>
        Read(texts, (name, count) => new NumberCount(PartNumber.Canonical(name), count));

    /// <summary>The same with names as they are: things of a manifest.</summary>
    public static Result<ValueList<NumberCount>> Things(IEnumerable<string>? texts) =>
        Read(texts, (name, count) => new NumberCount(name.Trim(), count));

    private static Result<ValueList<NumberCount>> Read(IEnumerable<string>? texts, Func<string, int, NumberCount> make)
    {
        var (read, faults) = (new List<NumberCount>(), new List<Fault>());
        foreach (var text in texts ?? [])
        {
            var at = text.LastIndexOf('=');
            var count = 1;
            if (at >= 0 && !int.TryParse(text[(at + 1)..], NumberStyles.None, CultureInfo.InvariantCulture, out count))
                faults.Add(new(text, $"\"{text[(at + 1)..]}\" is not a count", "Write it as number=count, such as 4410-22=4."));
            else
                read.Add(make(at < 0 ? text : text[..at], count));
        }

        return faults.Count > 0 ? Result<ValueList<NumberCount>>.Bad(faults) : Result<ValueList<NumberCount>>.Good(read.ToValueList());
    }

    /// <summary>An option that takes a day as <c>2026-04-30</c>, or from today: <c>today</c>, <c>+10d</c>, <c>-3w</c>.</summary>
    public static Option<DateOnly?> Day(Desk desk, string name, string says) => new(name)
    {
        Description = says,
        HelpName = "day",
        CustomParser = parsed =>
        {
            if (Day(desk.Today, parsed.Tokens[0].Value) is { } day)
                return day;
            parsed.AddError($"{name}: \"{parsed.Tokens[0].Value}\" is not a day; write it as 2026-04-30, today, +10d or -3w");
            return null;
        },
    };

    private static DateOnly? Day(DateOnly today, string text)
    {
        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
            return day;
        if (text == "today")
            return today;
        return text.Length > 2 && text[0] is '+' or '-' && text[^1] is 'd' or 'w'
            && int.TryParse(text[1..^1], NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number <= 10_000
            ? today.AddDays((text[0] == '-' ? -1 : 1) * (text[^1] == 'w' ? 7 : 1) * number)
            : null;
    }

    public static Option<PieceCondition?> Condition() => new("--condition") { Description = "new, used or refurbished." };

    public static Argument<string> Number() => new("number") { Description = "The part number." };

    public static Argument<string> Counted() =>
        new("number=count") { Description = "The part number, with a count if it is not one: 4410-22=4." };

    /// <summary>An order or outside work by its mark, by <c>last</c>, or by the name of who has it when that leaves no doubt.</summary>
    public static Result<T> Find<T>(
        string mark, IEnumerable<T> all, Func<T, Guid> id, Func<T, string> who, Func<T, bool> isOpen, string kind)
    {
        var known = all.ToList();
        var named = known.Where(one => string.Equals(who(one), mark, StringComparison.OrdinalIgnoreCase)).ToList();
        var found = mark == "last" ? known.TakeLast(1).ToList()
            : named.Count(isOpen) == 1 ? [.. named.Where(isOpen)]
            : named.Count == 1 ? named
            : mark.Length < 4
            ? []
            : known.Where(one => $"{id(one):N}".EndsWith(mark.ToLowerInvariant(), StringComparison.Ordinal)).ToList();
        return found.Count == 1 ? Result<T>.Good(found[0])
            : Result<T>.Bad(new Fault($"{kind} {mark}",
                named.Count > 1 ? $"{named.Count} are with {mark}" : "there is none of that mark or name",
                NearNames.Ask(mark, known.Select(who), "refettle orders shows each one's mark.")));
    }
}
