using Refettle.Timeline.Network;
using Refettle.Timeline.Tonight;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Refettle.Cli.Views;

/// <summary>What can be finished tonight.</summary>
internal static class TonightView
{
    private const int Shown = 5;
    private const int FirstSteps = 3;

    public static IRenderable Of(Car car, TonightAnswer answer, Minutes minutes, TaskNetwork network)
    {
        var lines = new List<IRenderable>();
        if (answer.Offers.Count == 0)
            lines.Add(new Text($"Nothing can be finished in {minutes} as things stand."));
        foreach (var (offer, i) in answer.WithOrdersAsOne.Take(Shown).Select((offer, i) => (offer, i)))
            lines.AddRange(offer.Task.Kind == TaskKind.Order
                ? Ordered(answer.Orders, i + 1, network)
                : Offered(offer, i + 1, ToldCautions.Of(car, offer.Task)));
        if (answer.Evening.Count > 1)
            lines.Add(new Text(
                $"One after the other: {string.Join(", then ", answer.Evening.Select(id => network.Tasks.FirstOrDefault(task => task.Id == id)?.Says ?? id))}"));
        if (answer.NotNow.Count > 0)
            lines.Add(new Text("Not tonight:"));
        lines.AddRange(answer.NotNow.Take(Shown)
            .Select(one => new Padder(new Markup($"[dim]{one.Task.Says.Safe()}: {one.Why.Safe()}[/]"), new Padding(2, 0, 0, 0))));
        lines.Add(new Markup($"[yellow]{Wording.Safety.Safe()}[/]"));
        return new Rows(lines);
    }

    private static IEnumerable<IRenderable> Ordered(ValueList<Finishable> orders, int number, TaskNetwork network)
    {
        yield return new Markup($"[bold]{number}. Order[/]");
        foreach (var order in orders)
        {
            yield return new Padder(
                new Markup($"{order.Task.Says.Safe()} [dim]({order.Task.Id.Safe()})[/]: {string.Join("; ", order.Why).Safe()}"),
                new Padding(3, 0, 0, 0));
            foreach (var caution in order.Task.Cautions)
                yield return new Padder(new Markup($"[yellow]! {caution.Safe()}[/]"), new Padding(3, 0, 0, 0));
        }

        if (orders.Any(order => Deliveries.IsPlaced(network, order.Task)))
            yield return new Padder(new Text(
                "What and how many: refettle basket. Ordered at a supplier, say it with refettle orders place."), new Padding(3, 0, 0, 0));
    }

    private static IEnumerable<IRenderable> Offered(Finishable offer, int number, ToldCautions cautions)
    {
        yield return new Markup($"[bold]{number}. {offer.Task.Says.Safe()}[/] [dim]({offer.Task.Id.Safe()})[/]");
        yield return new Padder(new Text(string.Join("; ", offer.Why)), new Padding(3, 0, 0, 0));
        if (Steps(offer.Task) is { } steps)
            yield return new Padder(new Text(steps), new Padding(3, 0, 0, 0));
        foreach (var caution in cautions.Shown)
            yield return new Padder(new Markup($"[yellow]! {caution.Safe()}[/]"), new Padding(3, 0, 0, 0));
        if (cautions.Further.Count > 0)
            yield return new Padder(
                new Markup($"[yellow]! {Wording.Count(cautions.Further.Count, "more caution")} at its steps: read them in refettle timeline before you begin.[/]"), new Padding(3, 0, 0, 0));
        if (offer.Task.Rungs.Any(rung => rung.Danger != Danger.None))
            yield return new Padder(new Markup(
                $"[yellow]! Ask refettle stuck {offer.Task.Joint?.Safe()} once more before the first try.[/]"), new Padding(3, 0, 0, 0));
    }

    /// <summary>The first of several; null where the name of the task tells them all.</summary>
    private static string? Steps(WorkTask task)
    {
        var says = task.Work.Select(step => step.Says).ToList();
        return says.All(task.Says.Contains) ? null
            : $"First: {string.Join("; ", says.Take(FirstSteps))}{(says.Count > FirstSteps ? $"; {says.Count - FirstSteps} more" : "")}";
    }
}
