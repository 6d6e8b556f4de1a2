namespace Refettle.Logbook;

/// <summary>What is wrong with an entry about stock by itself; whether the pieces are there is for the shelf to say.</summary>
internal static class StockCheck
{
    private const int Most = 100_000;

    private const int LongestDays = 3_650;

    public static IEnumerable<Fault> Of(Happening happening) => happening switch
    {
        NumberDescribed described => Described(described.Number),
        NumberAssigned assigned =>
            Position(assigned.Thing).Concat(Numbers(assigned.Number is null ? [] : [new(assigned.Number, assigned.Count)])),
        Reserved reserved => Position(reserved.Thing).Concat(Numbers([new(reserved.Number, reserved.Count)])),
        PiecesWanted wanted =>
            Position(wanted.Thing)
                .Concat(wanted.Count is < 0 or > Most
                    ? [new(wanted.Thing, $"a count of {wanted.Count}", $"Give 1 to {Most}, or 0 when none are wanted any more.")]
                    : []),
        PiecesMoved moved => Moved(moved),
        KitOpened opened => Batches([(opened.Kit, opened.Count), .. Pieces(opened.Contents)]),
        MadeUp made => Batches([(made.Made, made.Count), .. Pieces(made.Taken)]),
        Ordered ordered => Ordered(ordered),
        OrderCancelled cancelled => Numbers(cancelled.Lines),
        OrderPromised promised => DayCheck.Of("order", promised.Promised),
        Arrived arrived => Batches(Pieces(arrived.Lines)).Concat(DayCheck.Of("arrival", arrived.On)),
        SentBack back => Batches(Pieces(back.Lines)).Concat(DayCheck.Of("return", back.On)),
        TrialFitted tried => Numbers([new(tried.Number, tried.Count)]).Concat(DayCheck.Of("trial", tried.On)),
        OffersListed listed => Listed(listed),
        SentOut sent => Sent(sent),
        CameBack back => Items(back.Items.Select(item => (item.What, item.Count, item.As))).Concat(DayCheck.Of("outside work", back.On)),
        _ => [],
    };

    private static IEnumerable<Fault> Described(PartNumber number)
    {
        var place = $"number {number.Id}";
        var mentioned = number.Contains.Concat(number.MadeFrom).ToList();
        var others = number.Substitutes.Select(other => other.Number).Concat(number.SupersededBy is null ? [] : [number.SupersededBy])
            .ToList();
        foreach (var fault in Numbers([new(number.Id, 1), .. mentioned, .. others.Select(other => new NumberCount(other, 1))]))
            yield return fault;
        if (others.Concat(mentioned.Select(one => one.Number)).Contains(number.Id))
            yield return new(place, "it names itself", "Name another number.");
        if (mentioned.DistinctBy(one => one.Number).Count() < mentioned.Count)
            yield return new(place, "it names one number twice among what it contains or is made from", "Add their counts up.");
        if (number.ShelfLifeMonths is < 1 or > 600)
            yield return new(place, $"a shelf life of {number.ShelfLifeMonths} months", "Give 1 to 600 months, or none.");
        if (number.Breaks is < 0 or > 1)
            yield return new(place, $"it breaks with a chance of {number.Breaks}", "Give 0 to 1.");
    }

    private static IEnumerable<Fault> Moved(PiecesMoved moved)
    {
        if (moved.From == moved.To)
            yield return new($"number {moved.Batch.Number}", "the pieces stay where they are", "Give another place to go to.");
        foreach (var fault in Batches([(moved.Batch, moved.Count)]).Concat(DayCheck.Of($"number {moved.Batch.Number}", moved.On)))
            yield return fault;
        foreach (var place in new[] { moved.From, moved.To }.Where(place => place.Kind == StockPlaceKind.Car))
        {
            var faults = place.Position() is { } position
                ? Position(position.Thing)
                : [new Fault("place", $"\"{place.Name}\" is no place on a car", "Write it as car/part x or car/joint x.")];
            foreach (var fault in faults)
                yield return fault;
        }
    }

    private static IEnumerable<Fault> Ordered(Ordered ordered) =>
        Named(ordered.Supplier, "order", "from nobody", "Name the supplier.")
            .Concat(Numbers(ordered.Lines.Select(line => new NumberCount(line.Number, line.Count))))
            .Concat(ordered.Lines.Count == 0 ? [new Fault("order", "it has no lines", "Give what is ordered, as number=count.")] : [])
            .Concat(ordered.Lines.GroupBy(line => line.Number).Where(group => group.Count() > 1)
                .Select(group => new Fault($"order {group.Key}", "it is there twice", "Add their counts up.")))
            .Concat(Days(ordered.On, ordered.Promised, "order"))
            .Concat(Paid("order", ordered.Lines.Select(line => line.Each).Append(ordered.Carriage)))
            .Concat(ordered.ReturnDays is < 0 or > LongestDays
                ? [new Fault("order", $"to be returned within {ordered.ReturnDays} days", $"Give 0 to {LongestDays}.")]
                : []);

    private static IEnumerable<Fault> Listed(OffersListed listed)
    {
        foreach (var fault in Named(listed.Supplier, "list", "of nobody", "Name the supplier.")
            .Concat(Numbers(listed.Offers.Select(offer => new NumberCount(offer.Number, 1))))
            .Concat(Paid("list", listed.Offers.Select(offer => offer.Each))).Concat(DayCheck.Of("list", listed.On)))
            yield return fault;
        if (listed.Currency.Length != 3 || !listed.Currency.All(char.IsAsciiLetterUpper))
            yield return new("list", $"its currency is \"{listed.Currency}\"", "Give the three capital letters of ISO 4217, such as EUR.");
        foreach (var offer in listed.Offers
            .Where(offer => offer.Minimum is < 1 or > Most || offer.Multiple is < 1 or > Most || offer.LeadDays is < 0 or > LongestDays))
            yield return new($"offer {offer.Number}", "a minimum, multiple or lead time out of range",
                $"Give 1 to {Most} pieces and 0 to {LongestDays} days.");
    }

    private static IEnumerable<Fault> Sent(SentOut sent) =>
        Named(sent.To, "outside work", "to nobody", "Name the shop.")
            .Concat(string.IsNullOrWhiteSpace(sent.Work) ? [new("outside work", "nothing is said of it", "Say what is to be done.")] : [])
            .Concat(Items(sent.Items.Select(item => (item.What, item.Count, item.Batch))))
            .Concat(sent.Items.GroupBy(item => item.What).Where(group => group.Count() > 1)
                .Select(group => new Fault($"outside work {group.Key}", "it is there twice", "Add their counts up.")))
            .Concat(Days(sent.On, sent.Promised, "outside work"))
            .Concat(Paid("outside work", [sent.Price]));

    private static IEnumerable<Fault> Items(IEnumerable<(string What, int Count, Batch? Batch)> items)
    {
        var all = items.ToList();
        if (all.Count == 0)
            yield return new("outside work", "nothing is named", "Give what leaves or came back.");
        foreach (var item in all.Where(item => string.IsNullOrWhiteSpace(item.What)))
            yield return new("outside work", "a line without words", "Say what it is.");
        foreach (var item in all.Where(item => item.Count is < 1 or > Most))
            yield return new($"outside work {item.What}", $"a count of {item.Count}", $"Give 1 to {Most}.");
        foreach (var fault in Batches(all.Where(item => item.Batch is not null).Select(item => (item.Batch!, item.Count))))
            yield return fault;
    }

    private static IEnumerable<(Batch, int)> Pieces(IEnumerable<ArrivedLine> lines) => lines.Select(line => (line.Batch, line.Count));

    private static IEnumerable<Fault> Batches(IEnumerable<(Batch Batch, int Count)> pieces)
    {
        foreach (var (batch, count) in pieces)
        {
            foreach (var fault in Numbers([new(batch.Number, count)])
                .Concat(DayCheck.Of($"number {batch.Number}", batch.Made, batch.UseBy)))
                yield return fault;
            if (batch.UseBy < batch.Made)
                yield return new($"number {batch.Number}", $"to be used by {batch.UseBy:yyyy-MM-dd}, but made on {batch.Made:yyyy-MM-dd}",
                    "Look at the dates again.");
        }
    }

    private static IEnumerable<Fault> Numbers(IEnumerable<NumberCount> numbers)
    {
        foreach (var (number, count) in numbers)
        {
            if (!PartNumber.IsValid(number))
                yield return new("number", $"\"{number}\" is not a part number",
                    $"Write it in capitals, with 1 to {PartNumber.MaxLength} characters.");
            if (count is < 1 or > Most)
                yield return new($"number {number}", $"a count of {count}", $"Give 1 to {Most}.");
        }
    }

    private static IEnumerable<Fault> Position(string thing) =>
        Thing.TryParse(thing, out var named) && named.Kind is ThingKind.Part or ThingKind.Joint
        ? []
        : [new("position", $"\"{thing}\" takes no part number", "Write part x or joint x.")];

    private static IEnumerable<Fault> Named(string name, string place, string found, string mend) =>
        string.IsNullOrWhiteSpace(name) || name.Length > 200 || name.Any(char.IsControl) ? [new(place, found, mend)] : [];

    private static IEnumerable<Fault> Days(DateOnly on, DateOnly? promised, string place) =>
        promised < on
            ? [new(place, $"promised for {promised:yyyy-MM-dd}, before {on:yyyy-MM-dd} when it was given", "Look at the dates again.")]
            : DayCheck.Of(place, on, promised);

    private static IEnumerable<Fault> Paid(string place, IEnumerable<Money?> prices) =>
        prices.Any(price => price is { Amount: < 0 or > 10_000_000 }) ? [new(place, "a price out of range", "Give 0 or more.")] : [];
}
