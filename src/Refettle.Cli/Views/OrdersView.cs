using Refettle.Cli.Verbs;
using Refettle.Stock;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Refettle.Cli.Views;

/// <summary>Orders and outside work.</summary>
internal static class OrdersView
{
    public static IRenderable Of(
        Shelf shelf, Func<string, Car> car, ValueList<Order> orders, ValueList<OutsideWork> outside, DateOnly today)
    {
        if (orders.Count + outside.Count == 0)
            return new Text("Nothing is to come and nothing is away.");
        return new Rows([.. orders.SelectMany(order => Order(shelf, order, today)),
            .. outside.SelectMany(work => Work(work, car(work.Car).Structure, today))]);
    }

    private static IEnumerable<IRenderable> Order(Shelf shelf, Order order, DateOnly today)
    {
        yield return new Markup(
            $"[bold]{order.Supplier.Safe()}[/] {LogVerb.Mark(order.Id)}, ordered {order.On:yyyy-MM-dd}{Promise(order.Promised, order.IsOpen, today)}");
        foreach (var line in order.Lines)
            yield return new Text(
                $"    {line.Line.Count} × {line.Line.Number}{(shelf.NameOf(line.Line.Number) is { Length: > 0 } name ? $" {name}" : "")}: {State(line)}{(line.Line.Each is { } each ? $", {each} each" : "")}");
    }

    private static IEnumerable<IRenderable> Work(OutsideWork work, Structure structure, DateOnly today)
    {
        yield return new Markup(
            $"[bold]{work.To.Safe()}[/] {LogVerb.Mark(work.Id)}, {work.Work.Safe()}, away since {work.On:yyyy-MM-dd} ({today.DayNumber - work.On.DayNumber} days){Promise(work.Promised, work.IsAway, today)}");
        foreach (var line in work.Lines)
        {
            yield return new Text(
                $"    {line.Item.Count} × {Named(line, structure)}: {(line.Away > 0 ? $"{line.Away} away" : "all back")}{(line.Item.Photos.Count > 0 ? $", photos {string.Join(", ", line.Item.Photos)}" : ", no photo")}");
            foreach (var back in line.Back)
                yield return new Text(
                    $"        {back.On:yyyy-MM-dd} {back.Item.Count} back: {back.Item.Condition}{(back.Item.Good ? "" : " (not usable)")}");
        }
    }

    /// <summary>With the words by which it comes back.</summary>
    private static string Named(OutsideLine line, Structure structure) =>
        line.Name(structure) is var name && name == line.Item.What ? name : $"{name} ({line.Item.What})";

    private static string Promise(DateOnly? promised, bool open, DateOnly today) => promised is not { } day ? ", no day promised"
        : open && day < today
        ? $", promised for {day:yyyy-MM-dd}, [yellow]{today.DayNumber - day.DayNumber} days late[/]"
        : $", promised for {day:yyyy-MM-dd}";

    private static string State(OrderedLine line) => string.Join(", ", new[]
    {
        line.Arrived > 0 ? $"{line.Arrived} came" : "",
        line.Cancelled > 0 ? $"{line.Cancelled} cancelled" : "",
        line.SentBack > 0 ? $"{line.SentBack} sent back" : "",
        line.ToCome > 0 ? $"{line.ToCome} to come" : "",
    }.Where(text => text.Length > 0));
}
