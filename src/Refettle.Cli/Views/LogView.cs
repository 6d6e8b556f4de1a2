using Refettle.Cli.Verbs;
using Refettle.Logbook;
using Refettle.Timeline;
using Refettle.Timeline.Spells;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Refettle.Cli.Views;

/// <summary>The logbook, a line an entry.</summary>
internal static class LogView
{
    public static IRenderable Of(IReadOnlyCollection<HistoryLine> shown, int all, WallClock clock, DeviceNames names)
    {
        var table = new Table { Border = TableBorder.None };
        table.AddColumns("Mark", $"When ({clock.Zone.Id})", "Device", "What");
        foreach (var column in table.Columns.Take(3))
            column.NoWrap();
        foreach (var line in shown)
            table.AddRow(new Text(LogVerb.Mark(line.Entry.Id)), new Text(DayWords.Moment(clock.At(line.Entry.At))),
                new Text(names.Of(line.Entry.Device)), What(line));
        return shown.Count == all ? table : new Rows(new Text($"The newest {shown.Count} of {all} entries (--most 0 for all):"), table);
    }

    private static Markup What(HistoryLine line)
    {
        var told = Told.Of(line).Safe();
        return line.Standing switch
        {
            Standing.Struck => new($"[strikethrough]{told}[/] (struck)"),
            Standing.NotApplied => new($"{told} [yellow](not applied: {(line.Reason ?? "").Safe()})[/]"),
            _ => new(told),
        };
    }
}
