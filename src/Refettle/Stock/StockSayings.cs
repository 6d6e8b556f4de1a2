using Refettle.Logbook;

namespace Refettle.Stock;

/// <summary>What an entry about stock tells, in a line.</summary>
public static class StockSayings
{
    /// <param name="named">What a thing is called, from <c>part x</c>; what is no thing stays as it was written.</param>
    public static string Of(StockHappening happening, Func<string, string> named) => happening switch
    {
        NumberDescribed described =>
            $"{described.Number.Id} described{(described.Number.Name.Length > 0 ? $": {described.Number.Name}" : "")}",
        NumberAssigned { Number: null } assigned => $"{named(assigned.Thing)} has no part number any more",
        NumberAssigned assigned => $"{named(assigned.Thing)} takes {assigned.Count} × {assigned.Number}",
        PiecesMoved moved =>
            $"{Pieces(moved.Batch, moved.Count)}: from {Place(moved.From)} to {Place(moved.To)}{(moved.Why is null ? "" : $" ({moved.Why})")}",
        KitOpened opened => $"{Pieces(opened.Kit, opened.Count)} opened: {Lines(opened.Contents)}",
        MadeUp made => $"{Pieces(made.Made, made.Count)} made up from {Lines(made.Taken)}",
        Reserved reserved => $"{reserved.Count} × {reserved.Number} kept for {named(reserved.Thing)}",
        PiecesWanted { Count: 0 } wanted => $"no new pieces are wanted for {named(wanted.Thing)} any more",
        PiecesWanted wanted => $"{wanted.Count} new wanted for {named(wanted.Thing)}",
        Ordered ordered =>
            $"ordered at {ordered.Supplier}: {string.Join(", ", ordered.Lines.Select(line => $"{line.Count} × {line.Number}"))}{(ordered.Promised is { } day ? $", promised for {day:yyyy-MM-dd}" : "")}",
        OrderPromised promised => $"an order is promised for {promised.Promised:yyyy-MM-dd}",
        OrderCancelled cancelled => $"cancelled: {string.Join(", ", cancelled.Lines.Select(line => $"{line.Count} × {line.Number}"))}",
        Arrived arrived => $"arrived {arrived.On:yyyy-MM-dd}: {Lines(arrived.Lines)}",
        SentBack back => $"sent back to the supplier: {Lines(back.Lines)}{(back.Why is null ? "" : $" ({back.Why})")}",
        TrialFitted tried =>
            $"{tried.Count} × {tried.Number} held up to the car: {(tried.Fits ? "fits" : "does not fit")}{(tried.Says is null ? "" : $" ({tried.Says})")}",
        OffersListed listed => $"list of {listed.Supplier}: {listed.Offers.Count} numbers",
        SentOut sent =>
            $"sent to {sent.To} ({sent.Work}): {string.Join(", ", sent.Items.Select(item => $"{item.Count} × {named(item.What)}"))}",
        CameBack back =>
            $"back from an outside shop: {string.Join(", ", back.Items.Select(item => $"{item.Count} × {named(item.What)}, {item.Condition}{(item.Good ? "" : ", not usable")}"))}",
        _ => happening.GetType().Name,
    };

    /// <summary>By identifiers: what a command takes.</summary>
    public static string Of(StockHappening happening) => Of(happening, thing => thing);

    private static string Lines(ValueList<ArrivedLine> lines) => string.Join(", ", lines.Select(line => Pieces(line.Batch, line.Count)));

    private static string Pieces(Batch batch, int count) =>
        $"{count} × {batch.Number}{(batch.Condition == PieceCondition.New ? "" : $" {batch.Condition.ToString().ToLowerInvariant()}")}";

    private static string Place(StockPlace place) => place.Kind switch
    {
        StockPlaceKind.Shelf => "the shelf",
        StockPlaceKind.Car => place.Name.Replace("/", " ", StringComparison.Ordinal),
        StockPlaceKind.Broken => "what broke",
        StockPlaceKind.Scrapped => "scrap",
        StockPlaceKind.Counting => "the count",
        StockPlaceKind.Away => "an outside shop",
        _ => place.Name,
    };
}
