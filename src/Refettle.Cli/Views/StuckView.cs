using Refettle.Stuck;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Refettle.Cli.Views;

/// <summary>What to try next on a stuck joint.</summary>
internal static class StuckView
{
    private const int WidestBar = 24;

    private static readonly string[] Levels = ["by hand", "light", "firm", "hard", "solid"];

    public static IRenderable Of(StuckAnswer answer, DateTimeOffset now) => new Rows(
        new Markup($"[bold]{answer.Joint.Safe()}[/] is {Word(answer.Condition)}"),
        Soak(answer, now),
        Beliefs(answer),
        answer.Condition == JointCondition.Freed
            ? new Text($"Nothing left to free. When it is undone: refettle done 'open({answer.Joint})'")
            : Advice(answer),
        Closed(answer),
        new Rows(answer.Leave
            .Select(leave => new Markup(
                $"[yellow]{leave.Rung.Safe()} may be tried without the parts in hand, by your leave: {leave.Why.Safe()}[/]"))),
        new Text($"Where the chances come from: {answer.Origin}"),
        new Markup($"[yellow]{Wording.Safety.Safe()}[/]"));

    /// <summary>A condition as a mechanic says it; <c>--outcome</c> takes the same words.</summary>
    public static string Word(JointCondition condition) => condition switch
    {
        JointCondition.TurnsWithSleeve => "turns-with-sleeve",
        JointCondition.SnappedProud => "snapped-proud",
        JointCondition.SnappedFlush => "snapped-flush",
        JointCondition.ThreadGone => "thread-gone",
        _ => condition.ToString().ToLowerInvariant(),
    };

    private static Text Soak(StuckAnswer answer, DateTimeOffset now) => answer.Soak is not { } clock ? new("")
        : new(clock.IsReady(now) ? $"It has soaked since {clock.Since.UtcDateTime:yyyy-MM-dd HH:mm} UTC and is ready: try it now."
            : clock.Doubt(now) is { } doubt ? $"It soaks; {doubt}."
            : $"It soaks since {clock.Since.UtcDateTime:yyyy-MM-dd HH:mm} UTC, ready {clock.Ready.UtcDateTime:yyyy-MM-dd HH:mm} UTC. Do something else until then.");

    private static Table Beliefs(StuckAnswer answer)
    {
        var table = new Table { Border = TableBorder.None };
        table.AddColumn("How rusted");
        table.AddColumn("By exposure alone");
        table.AddColumn("After the tries on this car");
        for (var level = 0; level < Levels.Length; level++)
            table.AddRow(new Text(Levels[level]), new Text(Bar(answer.Before[level])), new Text(Bar(answer.Now[level])));
        return table;
    }

    private static string Bar(double chance) => $"{new string('█', (int)Math.Round(chance * WidestBar)).PadRight(WidestBar)} {chance,4:0%}";

    private static Rows Advice(StuckAnswer answer)
    {
        if (answer.Next is not { } next)
            return new(new Markup("[red]Nothing may be tried now: every gate is closed.[/]"));
        var lines = new List<IRenderable>
        {
            new Markup($"[bold]Next:[/] {next.Best.Says.Safe()} [dim]({next.Best.Id.Safe()}, {next.Best.Tool.Safe()}, {next.Best.Takes})[/]"),
            new Text($"Expected until it is free, what may break included: {next.ExpectedMinutes:0} min of work."),
            Options(next),
        };
        if (next.Best.Waits > Minutes.Zero)
            lines.Insert(1, new Text($"Then {next.Best.Waits} pass by themselves; do something else meanwhile."));
        if (answer.Better is { } better)
            lines.Add(new Text($"Better would be {better.Id}, but its gate is closed (below)."));
        lines.AddRange(next.Best.Cautions.Select(caution => new Markup($"[yellow]! {caution.Safe()}[/]")));
        return new(lines);
    }

    private static Table Options(NextTryAnswer next)
    {
        var table = new Table { Border = TableBorder.None };
        foreach (var heading in new[] { "Try", "Frees it", "Makes it worse", "Minutes in all" })
            table.AddColumn(new TableColumn(heading) { NoWrap = true });
        foreach (var option in next.Options)
            table.AddRow(new Text(option.Rung.Id), new Text($"{option.Frees:0%}"), new Text($"{option.Harms:0%}"),
                new Text($"{option.ExpectedMinutes:0}"));
        return table;
    }

    private static Rows Closed(StuckAnswer answer)
    {
        var lines = new List<IRenderable>();
        var told = new Dictionary<ClosedBy, string>();
        foreach (var gate in answer.Closed)
        {
            lines.Add(new Markup($"[red]Not now: {gate.Rung.Id.Safe()}[/]"));
            lines.AddRange(gate.Reasons
                .Select(reason => Remark(told.TryAdd(reason, gate.Rung.Id) ? Reason(reason) : $"{reason.Cause}: as for {told[reason]}")));
        }

        return new(lines);
    }

    private static string Reason(ClosedBy reason)
    {
        const int most = 5;
        var names = string.Join(", ", reason.Things.Take(most));
        return $"{reason.Cause}: {names}{(reason.Things.Count > most ? $" and {reason.Things.Count - most} more" : "")}";
    }

    private static Padder Remark(string text) => new(new Text(text), new Padding(4, 0, 0, 0));
}
