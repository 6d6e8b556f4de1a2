using Refettle.CloseUp;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Refettle.Cli.Views;

/// <summary>How a joint is closed, and what stands between the car and the road.</summary>
internal static class ClosingView
{
    public static IRenderable Of(ClosingCard card)
    {
        var lines = new List<IRenderable>
            { new Markup($"[bold]{card.Joint.Id.Safe()}[/]: {Wording.Count(card.Joint.Count, "fastener")}{Figure(card).Safe()}") };
        if (card.Advice is { } advice)
            lines.Add(new Markup($"{(advice.Use == TorqueUse.Ask ? "[bold]Asked:[/] " : "")}{advice.Says.Safe()}"));
        if (card.General is { } general)
            lines.Add(new Text($"General range: {general.Low} to {general.High}"));
        if (card.Order.Count > 1)
            lines.Add(new Text($"Order: {string.Join(' ', card.Order)}"));
        lines.AddRange(card.Stages.Select((stage, place) => new Text($"  {place + 1}. {stage.Says}")));
        if (card.NewFasteners > 0)
            lines.Add(new Text($"New: {card.NewFasteners}"));
        lines.AddRange(card.Says.Select(says => new Text(says)));
        return new Rows(lines);
    }

    public static IRenderable Of(ValueList<RoadBlock> blocks) => blocks.Count == 0
        ? new Text("Nothing by the log stands between the car and the road. Brakes, fluids, lights and local law are still yours to judge.")
        : new Rows([new Text($"{Wording.Count(blocks.Count, "thing")} to do before the road:"),
            .. blocks.Select(block => new Text($"  {block.Thing}: {block.Why}"))]);

    private static string Figure(ClosingCard card) => card.Joint.Torque is { } torque ? $", {torque}" : "";
}
