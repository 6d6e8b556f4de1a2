using Refettle.Logbook;
using Refettle.QuickLine;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Refettle.Cli.Views;

/// <summary>The ways to understand a line, numbered.</summary>
internal static class ReadingView
{
    public static IRenderable Of(LineAnswer answer)
    {
        var table = new Table { Border = TableBorder.None };
        table.AddColumns("", "Understood as", "Fit");
        table.Columns[0].RightAligned().NoWrap();
        foreach (var (reading, number) in answer.Readings.Select((reading, place) => (reading, place + 1)))
            table.AddRow(new Text($"{number}"), new Text(Says(reading)), new Text(reading.Fit > 0 ? $"{reading.Fit * 100:0} %" : ""));
        return new Rows(table,
            new Text("Nothing is written yet. Keep one: --keep 1. The fit is the share of your words that the name holds."));
    }

    public static string Says(Reading reading) =>
        $"{Word(reading.Kind)}{(reading.About is null ? "" : $": {string.Join(", ", reading.Also.Prepend(reading.About))}")}{string.Concat(Figures(reading).Select(figure => $", {figure}"))}";

    private static string Word(LineKind kind) => kind switch
    {
        LineKind.Done => "off or open",
        LineKind.Back => "back on or closed",
        LineKind.BagPacked => "put into",
        LineKind.BagMoved => "lies elsewhere",
        LineKind.BagEmptied => "emptied",
        _ => kind.ToString().ToLowerInvariant(),
    };

    private static IEnumerable<string> Figures(Reading reading)
    {
        if (reading.Words is { } words)
            yield return words;
        if (reading.For.Count > 0)
            yield return $"for {string.Join(", ", reading.For)}";
        if (reading.Condition is { } condition)
            yield return condition;
        if (reading is { Kind: LineKind.Finding, Scale: null })
            yield return "no word of its scale: kept as a note";
        if (reading.Need is { } need)
            yield return $"{need} new into the basket";
        if (reading is { Kind: LineKind.Try, Rung: null })
            yield return "method not said: kept as a note";
        else if (reading.Kind == LineKind.Try)
            yield return $"{reading.Rung}{(reading.IsSoaked ? ", soaked" : "")}, {(reading.Becomes is { } becomes ? StuckView.Word(becomes) : "it held")}";
        if (reading.Took is { } took)
            yield return $"{took}";
        if (reading.Kind == LineKind.Tightened)
            yield return reading.How == Tightness.Snug ? "snug only" : $"{reading.Torque?.ToString() ?? "torque not said"}";
        if (reading.Height is { } height)
            yield return $"{height}";
    }
}
