using NodaTime;
using Refettle.Timeline;
using Refettle.Timeline.Network;
using Refettle.Timeline.Scheduling;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Refettle.Cli.Views;

/// <summary>A timeline as a list of days.</summary>
internal static class TimelineTable
{
    public static IRenderable Of(TimelineAnswer answer, bool all) => answer.Tasks.Count == 0 && answer.Status != ScheduleStatus.Optimal
        ? new Rows([new Markup("[red]There is no such timeline.[/]"), .. Clashes(answer)])
        : new Rows([.. Head(answer), DayList(answer, all), .. Foot(answer)]);

    private static IEnumerable<IRenderable> Head(TimelineAnswer answer)
    {
        if (answer.Finish is { } finish)
            yield return new Markup($"[bold]Finished {DayWords.Moment(finish)}[/] — {Proof(answer).Safe()}");
        if (answer.Date is { } date)
            yield return answer.IsInTime == true
                ? new Markup($"[green]In time for {DayWords.Moment(date)}.[/]")
                : new Markup($"[red]Not in time for {DayWords.Moment(date)}.[/]");
        foreach (var line in Clashes(answer))
            yield return line;
        if (answer.CountsOnMore)
            yield return new Text(
                $"After {DayWords.Day(answer.LastEntered!.Value)} no spell is entered: the same rhythm is assumed to go on.");
        yield return new Text("Minutes are planned figures; how sure the finish is, refettle forecast says.");
        yield return Text.Empty;
    }

    private static string Proof(TimelineAnswer answer) => answer.Bound is { } bound && answer.Finish is { } finish && finish <= bound
        ? "proven: with these tasks and spells none is earlier"
        : $"an order that works; none ends before {(answer.Bound is { } least ? DayWords.Moment(least) : "now")}, whether one ends before this is not known";

    private static IEnumerable<IRenderable> Clashes(TimelineAnswer answer)
    {
        if (answer.Clashes.Count == 0)
            yield break;
        yield return new Text("These cannot be kept together; give up any one of them and the rest can be:");
        foreach (var clash in answer.Clashes)
            yield return new Padder(new Text(clash), new Padding(2, 0, 0, 0));
    }

    private static Table DayList(TimelineAnswer answer, bool all)
    {
        var table = new Table { Border = TableBorder.None, ShowHeaders = answer.Tasks.Count > 0, Expand = true };
        table.AddColumn(new TableColumn("When") { NoWrap = true });
        table.AddColumn(new TableColumn("What"));
        table.AddColumn(new TableColumn("Task"));
        table.AddColumn(new TableColumn("Takes") { Alignment = Justify.Right, NoWrap = true });
        var cautions = new DayCautions();
        LocalDate? day = null;
        foreach (var (task, piece, isFirst) in Lines(answer, all))
        {
            if (piece.Start.Date != day)
                table.AddRow(new Markup($"[bold]{DayWords.Day(piece.Start.Date)}[/]"), Text.Empty, Text.Empty, Text.Empty);
            day = piece.Start.Date;
            table.AddRow(new Text(When(task, piece)), new Markup(What(task, isFirst)), new Markup($"[dim]{task.Task.Id.Safe()}[/]"),
                new Text(isFirst ? Takes(task.Task) : ""));
            foreach (var caution in cautions.On(piece.Start.Date, task.Task))
                table.AddRow(Text.Empty, new Padder(new Markup($"[yellow]! {caution.Safe()}[/]"), new(2, 0, 0, 0)), Text.Empty, Text.Empty);
            foreach (var waste in isFirst ? task.Task.Waste : [])
                table.AddRow(Text.Empty, new Padder(new Markup($"[dim]{waste.Line().Safe()}[/]"), new(2, 0, 0, 0)), Text.Empty, Text.Empty);
        }

        return table;
    }

    /// <summary>Work by its pieces, waits once; what takes no time only when asked for.</summary>
    private static IEnumerable<(PlannedTask Task, PlannedWindow Piece, bool IsFirst)> Lines(TimelineAnswer answer, bool all) => answer.Tasks
        .Where(task => all || task.Task.Takes > Minutes.Zero)
        .SelectMany(task => task.Pieces.Count == 0
            ? [(task, new PlannedWindow(task.Start, task.Finish), true)]
            : task.Pieces.Select((piece, i) => (Task: task, Piece: piece, IsFirst: i == 0)))
        .OrderBy(line => line.Item2.Start);

    private static string When(PlannedTask task, PlannedWindow piece) => task.Task.IsWait
        ? $"  {DayWords.Clock(piece.Start.TimeOfDay)} until {DayWords.Moment(piece.End)[..^6]}"
        : $"  {DayWords.Clock(piece.Start.TimeOfDay)}–{DayWords.Clock(piece.End.TimeOfDay)}";

    private static string What(PlannedTask task, bool isFirst)
    {
        var says = $"{(isFirst ? "" : "go on: ")}{(task.Task.Chance < 1 ? $"({task.Task.Chance:0%} likely) " : "")}{task.Task.Says}".Safe();
        return task.Task.IsWait ? $"[dim]{says}[/]" : task.IsCritical ? $"[bold]* {says}[/]" : says;
    }

    private static string Takes(WorkTask task)
    {
        var takes = task.IsWait && task.Takes.Value >= 2 * 24 * 60 ? $"{task.Takes.Value / (24 * 60):0.#} d" : $"{task.Takes}";
        return task.Origin == Origin.Default && task.Takes > Minutes.Zero ? $"{takes}*" : takes;
    }

    private static IEnumerable<IRenderable> Foot(TimelineAnswer answer)
    {
        if (answer.Changes.Count > 0)
            yield return new Text($"Against the timeline kept: {Wording.Count(answer.Changes.Count, "task")} on another day, new or gone.");
        foreach (var change in answer.Changes.Take(12))
            yield return new Padder(new Text(Change(change)), new Padding(2, 0, 0, 0));
        if (answer.Tasks.Count == 0)
            yield break;
        yield return Text.Empty;
        yield return new Text("* before a task: it holds up the finish. * after minutes: nobody has said how long, a default by kind.");
        yield return new Markup($"[yellow]{Wording.Safety.Safe()}[/]");
    }

    private static string Change(TaskChange change) => (change.Was, change.Now) switch
    {
        ({ } was, { } now) => $"{change.Says}: {DayWords.Moment(was)} → {DayWords.Moment(now)}",
        (null, { } now) => $"{change.Says}: new, {DayWords.Moment(now)}",
        _ => $"{change.Says}: done, or not needed any more",
    };
}
