using Refettle.Stock.Baskets;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Refettle.Cli.Views;

/// <summary>What the plans use up, and what to order by when.</summary>
internal static class BasketView
{
    public static IRenderable Of(Basket basket, ValueList<TrialFit> fits) => basket.Lines.Count + basket.Unnumbered.Count + fits.Count == 0
        ? new Text("The plans use nothing up that is known of.")
        : new Rows([.. Purchases(basket), .. Unnumbered(basket), .. Lines(basket),
            .. fits.Select(fit => new Markup($"[yellow]{fit.Says.Safe()}[/]"))]);

    private static IEnumerable<IRenderable> Purchases(Basket basket)
    {
        if (basket.Purchases.Count == 0)
            yield break;
        yield return new Markup($"[bold]To order[/] (order-by days keep the date with {basket.Confidence:0%}):");
        foreach (var one in basket.Purchases)
        {
            yield return new Markup(
                $"  [bold]{(one.OrderBy is { } day ? $"{day:yyyy-MM-dd}" : "no day")}[/]{(one.DaysTooLate > 0 ? $" [red]{one.DaysTooLate} days too late[/]" : "")}  {one.Count} × {one.Number.Safe()} {one.Name.Safe()}{Buying(one).Safe()}");
            yield return Small(
                $"for {string.Join(", ", one.For)}{(one.Contents.Count > 0 ? $"; covers {string.Join(", ", one.Contents.Select(inside => $"{inside.Count} × {inside.Number}"))}" : "")}. {one.Says}");
        }

        if (basket.Costs.Count > 0)
            yield return new Text($"  {string.Join(", ", basket.Costs)} where prices are known");
    }

    private static string Buying(Purchase one) =>
        $"{(one.Count > one.Needed ? $" ({one.Needed} needed, fewer are not sold)" : "")}{(one.Supplier is null ? ", no supplier known" : $", {one.Supplier}")}{(one.Cost is { } cost ? $", {cost} {one.Currency}" : "")}";

    private static IEnumerable<IRenderable> Unnumbered(Basket basket)
    {
        if (basket.Unnumbered.Count == 0)
            yield break;
        yield return new Markup("[bold]Without a part number[/] (give one: refettle stock assign NUMBER THING):");
        foreach (var group in basket.Unnumbered.GroupBy(need => need.What).OrderBy(group => group.Key, StringComparer.Ordinal))
            yield return new Text(
                $"  {group.Sum(need => need.Count)} × {group.Key} for {string.Join(", ", group.Select(need => $"{need.Car} {need.Thing}"))}");
    }

    private static IEnumerable<IRenderable> Lines(Basket basket)
    {
        if (basket.Lines.Count == 0)
            yield break;
        yield return new Markup("[bold]In the basket[/]:");
        foreach (var same in basket.Lines.GroupBy(line => line.Need.Says))
        {
            yield return new Text($"  {same.Key}:");
            foreach (var line in same)
                yield return Small($"{line.Need.Count} × {line.Need.Number} for {line.Need.Car} {line.Need.Thing}: {Standing(line)}");
        }
    }

    private static string Standing(Served line) => string.Join(", ", line.Given.Select(given =>
        $"{given.Count} {(given.Supply.Order is not null ? $"to come {given.Supply.From:yyyy-MM-dd}{(given.DaysLate > 0 ? $", {given.DaysLate} days late" : "")}" : given.Supply.Kit is { } kit ? $"in kit {kit}, to be opened" : "in hand")}"
            + $"{(given.Supply.Number == line.Need.Number ? "" : $" as {given.Supply.Number}")}{(given.Caveat.Length > 0 ? $" ({given.Caveat})" : "")}").Concat(line.Missing > 0 ? [$"{line.Missing} missing"] : []));

    private static Padder Small(string text) => new(new Text(text), new Padding(6, 0, 0, 0));
}
