using Refettle.CloseUp.Refit;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Refettle.Cli.Views;

/// <summary>The sheet by which the car goes together: numbered steps, what belongs to each below it.</summary>
internal static class RefitView
{
    public static IRenderable Of(Car car, RefitSheet sheet, ValueList<StepFasteners> fasteners, ValueList<Awaited> awaited, int most) =>
        sheet.Steps.Count == 0 && sheet.Leftover.Count == 0 && sheet.Checks.Count == 0 && awaited.Count == 0
        ? new Text("By the log nothing is apart.")
        : new Rows([
            .. sheet.Steps.Take(most)
                .SelectMany((step, place) => Held(car, sheet, place)
                    .Concat(Step(step, fasteners.FirstOrDefault(one => one.Step == place), awaited.Where(one => one.Step == place),
                        place + 1))),
            .. sheet.Steps.Count > most ? [new Text($"… {sheet.Steps.Count - most} more steps")] : Array.Empty<IRenderable>(),
            .. Section("Not here yet:", awaited.Select(one => $"{(one.Step is { } step ? $"step {step + 1}: " : "")}{one.Says}")),
            .. Section("Left over, belonging to no step:", sheet.Leftover.Select(Bag)),
            .. Section("Bleed, in the maker's order: opened were", sheet.Bleeding.Select(joint => joint.Name ?? joint.Id)),
            .. Section("At the end:", sheet.Checks.SelectMany(End)),
            new Text("The vehicle maker's manual, local rules and licensed practice come first."),
        ]);

    private static IEnumerable<string> End(EndCheck check) =>
    [
        check.Says,
        .. check.Cautions.Select(caution => $"  ! {caution}"),
        .. check.Waste.Select(one => $"  {one.Line()}"),
        .. check.IsReady ? new[] { $"  When it is {(check.Waste.Count > 0 ? "handed in" : "done")}: refettle task done {check.Id}" } : [],
    ];

    /// <summary>Where that changes: what has to be here before it can go on.</summary>
    private static IEnumerable<IRenderable> Held(Car car, RefitSheet sheet, int place)
    {
        var waits = sheet.Steps[place].WaitsFor;
        if (waits.Count > 0 && (place == 0 || sheet.Steps[place - 1].WaitsFor != waits))
            yield return new Markup(
                $"[yellow]Not to be begun before it is here: {string.Join(", ", waits.Select(car.Structure.PartName)).Safe()}[/]");
    }

    private static IEnumerable<IRenderable> Step(RefitStep step, StepFasteners? fasteners, IEnumerable<Awaited> awaited, int number)
    {
        yield return new Markup(
            $"[bold]{number,3}  {step.Says.Safe()}[/]{(step.Side == Side.None ? "" : $", {step.Side.ToString().ToLowerInvariant()}")}  ({step.Takes})");
        foreach (var line in awaited.Where(one => one.Thing?.StartsWith("part ", StringComparison.Ordinal) == true)
            .Select(one => $"Not here yet. {one.Says}").Concat(Below(step, fasteners)))
            yield return new Padder(new Text(line), new(5, 0, 0, 0));
    }

    private static IEnumerable<string> Below(RefitStep step, StepFasteners? fasteners) =>
    [
        .. step.LastLooks.Select(Look),
        .. step.Cautions.Select(caution => $"! {caution}"),
        .. step.Bags.Select(Bag),
        .. Tight(step, fasteners),
        .. step.Remembers.Select(line => $"{line.At.ToLocalTime():yyyy-MM-dd}: {line.Says}"),
        .. step.Photos.Count == 0 ? [] : new[] { Wording.Count(step.Photos.Count, "photo") },
    ];

    private static string Look(Look look) =>
        $"Last look into {look.Name}{(look.IsPhotographed ? "" : ": photograph it")}{(look.Bags.Count == 0 ? "" : $"; not empty yet: {string.Join("; ", look.Bags.Select(Bag))}")}";

    private static IEnumerable<string> Tight(RefitStep step, StepFasteners? fasteners)
    {
        if (step.Card is not { } card)
            yield break;
        if (card.Joint.Torque is { } torque)
            yield return $"{torque} ({Wording.Of(card.Joint.Origin)})";
        if (card.General is { } general)
            yield return $"General range: {general.Low} to {general.High}";
        if (card.Order.Count > 2)
            yield return $"In the order {string.Join(' ', card.Order)}";
        if (card.NewFasteners > 0)
            yield return fasteners is null
                ? $"New: {card.NewFasteners}"
                : $"{fasteners.Says}{(fasteners.Keeps is { } keeps ? $". Keep them: refettle stock reserve {keeps.Number}={keeps.Count} --for \"{keeps.Thing}\"" : "")}";
        foreach (var says in card.Says)
            yield return says;
    }

    private static string Bag(Bag bag) =>
        $"Bag {BagCode.Shown(bag.Code)}{(bag.Holds.Count == 0 ? "" : $": {string.Join("; ", bag.Holds)}")}{(bag.Place is null ? "" : $" ({bag.Place})")}";

    private static IEnumerable<IRenderable> Section(string head, IEnumerable<string> lines)
    {
        var all = lines.ToList();
        return all.Count == 0 ? [] : [new Text(head), .. all.Select(line => new Padder(new Text(line), new(5, 0, 0, 0)))];
    }
}
