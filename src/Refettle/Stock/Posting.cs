using Refettle.Logbook;

namespace Refettle.Stock;

/// <summary>So many pieces more, or fewer, at a place. What an entry posts comes out even for each part
/// number: nothing appears or vanishes.</summary>
internal readonly record struct Posting(Batch Batch, StockPlace Place, int Count);

/// <summary>Turns entries into postings.</summary>
internal static class Postings
{
    /// <param name="orders">Supplier by order.</param>
    /// <param name="sent">The batch that a line of outside work took from the shelf; null when it took none.</param>
    public static IEnumerable<Posting> Of(Guid entry, Happening happening, Func<Guid, string?> orders, Func<Guid, string, Batch?> sent) =>
        happening switch
        {
            PiecesMoved moved => Move(moved.Batch, moved.Count, moved.From, moved.To),
            Arrived arrived =>
                arrived.Lines
                    .SelectMany(line => Move(line.Batch, line.Count, StockPlace.Supplier(orders(arrived.Order) ?? ""), StockPlace.Shelf)),
            SentBack back =>
                back.Lines.SelectMany(
                    line => Move(line.Batch, line.Count, StockPlace.Shelf, StockPlace.Supplier(orders(back.Order) ?? ""))),
            KitOpened opened => Move(opened.Kit, opened.Count, StockPlace.Shelf, StockPlace.Kit(opened.Kit.Number))
                .Concat(opened.Contents
                    .SelectMany(line => Move(line.Batch, line.Count, StockPlace.Kit(opened.Kit.Number), StockPlace.Shelf))),
            MadeUp made => Move(made.Made, made.Count, StockPlace.Kit(made.Made.Number), StockPlace.Shelf)
                .Concat(made.Taken.SelectMany(line => Move(line.Batch, line.Count, StockPlace.Shelf, StockPlace.Kit(made.Made.Number)))),
            SentOut sending =>
                sending.Items.Where(item => item.Batch is not null)
                    .SelectMany(item => Move(item.Batch!, item.Count, StockPlace.Shelf, StockPlace.Away(entry))),
            CameBack back => back.Items.SelectMany(item => sent(back.Sent, item.What) is { } batch ? Back(back.Sent, item, batch) : []),
            _ => [],
        };

    /// <summary>Pieces come back under the number they left under; their condition may have changed.</summary>
    private static IEnumerable<Posting> Back(Guid sent, BackItem item, Batch batch)
    {
        yield return new(batch, StockPlace.Away(sent), -item.Count);
        var (to, now) = item.Good ? (StockPlace.Shelf, item.As ?? batch) : (StockPlace.Scrapped, batch);
        yield return new(now with { Number = batch.Number }, to, item.Count);
    }

    private static IEnumerable<Posting> Move(Batch batch, int count, StockPlace from, StockPlace to) =>
        [new(batch, from, -count), new(batch, to, count)];
}
