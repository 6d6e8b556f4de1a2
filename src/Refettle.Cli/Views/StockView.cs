using System.Globalization;
using Refettle.Stock;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Refettle.Cli.Views;

/// <summary>The shelf.</summary>
internal static class StockView
{
    public static IRenderable Of(Shelf shelf, ValueList<ShelfLine> lines)
    {
        if (lines.Count == 0)
            return new Text("Nothing is known of any such part number. Say what is there: refettle stock count NUMBER=COUNT.");
        var table = new Table { Border = TableBorder.None };
        foreach (var heading in new[] { "Number", "Name", "On hand", "Kept", "Free", "To come", "Use by" })
            table.AddColumn(new TableColumn(heading) { NoWrap = heading != "Name" });
        foreach (var line in lines)
            table.AddRow(new Text(line.Number), new Text(line.Name), new Text(OnHand(line)), Number(line.Kept), new Text($"{line.Free}"),
                Number(line.ToCome), new Text($"{line.FirstUseBy:yyyy-MM-dd}"));
        return new Rows([table, .. shelf.Debts.Select(Debt)]);
    }

    public static IRenderable One(Shelf shelf, ShelfLine line)
    {
        var known = shelf.Number(line.Number);
        var rows = new List<IRenderable>
            { new Markup($"[bold]{line.Number.Safe()}[/] {line.Name.Safe()}"),
                new Text($"on hand {OnHand(line)}, kept {line.Kept}, free {line.Free}, to come {line.ToCome}, away {line.Away}") };
        if (known?.SupersededBy is { } next)
            rows.Add(new Text(
                $"superseded by {next}{(known.ServesForNew ? "; pieces of this number serve for it" : "; whether pieces of this number serve for it is not said")}"));
        rows.AddRange((known?.Contains ?? []).Select(one => new Text($"contains {one.Count} × {one.Number}")));
        rows.AddRange((known?.MadeFrom ?? []).Select(one => new Text($"made up from {one.Count} × {one.Number}")));
        rows.AddRange(new Family(shelf.Numbers).ServingFor(line.Number).Where(other => other.Number != line.Number)
            .Select(other => new Text(
                $"served by {other.Number}{(other.Caveat.Length > 0 ? $" ({other.Caveat})" : "")}, {shelf.OnHand(other.Number)} on hand")));
        if (known?.Breaks is { } breaks)
            rows.Add(new Text($"breaks with a chance of {breaks:0%} ({Wording.Of(known.Origin)})"));
        rows.AddRange(ListOffer.Of(shelf, line.Number).Select(Offered));
        rows.AddRange(line.Claims.Select(claim => new Text($"{claim.Count} kept for {claim.Car} {claim.Thing}")));
        rows.AddRange(shelf.Accounts.Where(account => account.Batch.Number == line.Number && account.Place.Kind != StockPlaceKind.Shelf)
            .Select(account => new Text(
                $"{Math.Abs(account.Count)} {account.Batch.Condition.ToString().ToLowerInvariant()} {Place(account.Place, came: account.Count < 0)}")));
        return new Rows(rows);
    }

    private static Text Offered(ListOffer one) => new(string.Create(CultureInfo.InvariantCulture,
        $"at {one.Supplier}{(one.Offer.Each is { } each ? $" for {each.Amount:0.00} {one.Currency} each" : ", no price given")}, list of {one.On:yyyy-MM-dd}"));

    private static Markup Debt(Debt debt) =>
        new($"[yellow]{debt.Car.Safe()} is owed {debt.Count} × {debt.Number.Safe()} for its {debt.Thing.Safe()}, which went to {debt.To.Safe()}[/]");

    private static string OnHand(ShelfLine line)
    {
        var counts = line.OnHand
            .Select(one => line.OnHand.Count == 1 && one.Condition == PieceCondition.New
                ? $"{one.Count}"
                : $"{one.Count} {one.Condition.ToString().ToLowerInvariant()}");
        var text = line.OnHand.Count == 0 ? "0" : string.Join(", ", counts);
        return line.TooOld == 0 ? text : $"{text}, {line.TooOld} too old";
    }

    private static Text Number(int count) => new(count == 0 ? "" : $"{count}");

    /// <param name="came">Fewer than none are there: they came from it.</param>
    private static string Place(StockPlace place, bool came) => place.Kind switch
    {
        StockPlaceKind.Supplier =>
            $"{(came ? "came from" : "went back to")} {(place.Name.Length > 0 ? place.Name : "an order that is not here")}",
        StockPlaceKind.Car => $"{(came ? "came off" : "on")} {place.Name.Replace("/", " ", StringComparison.Ordinal)}",
        StockPlaceKind.Away => "at an outside shop",
        StockPlaceKind.Broken => "broken",
        StockPlaceKind.Scrapped => "scrapped",
        StockPlaceKind.Counting => came ? "found by counting" : "missed by counting",
        _ => came ? $"came out of {place.Name}, opened or made up" : $"went into {place.Name}, opened or made up",
    };
}
