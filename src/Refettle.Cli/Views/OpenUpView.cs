using Refettle.Stuck.OpenUp;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Refettle.Cli.Views;

/// <summary>Whether to open up first, and what that hangs on.</summary>
internal static class OpenUpView
{
    public static IRenderable Of(OpenUpCase made, OpenUpAnswer answer)
    {
        if (made.Question.Openings.Count == 0)
            return new Rows(new Text("Nothing has to be opened for any of these tries: ask refettle stuck for each."), Notes(made));
        return new Rows(
            new Markup(answer.Best.Open.Count == 0
                ? "[bold]Try first[/]; open nothing yet."
                : $"[bold]Open now:[/] {Names(made, answer.Best.Open).Safe()}"),
            Both(made, answer),
            new Text(Odds(answer)),
            new Text(""),
            Openings(made),
            Tries(answer),
            new Rows(answer.Turnings.Take(3).Select(turning => Told(made, turning))),
            Notes(made));
    }

    private static Table Both(OpenUpCase made, OpenUpAnswer answer)
    {
        var table = new Table { Border = TableBorder.None };
        table.AddColumn("Until all are free and closed again");
        table.AddColumn("Expected");
        table.AddRow(new Text("Try first, open only for what holds"), new Text(Expected(answer.TryFirst)));
        if (answer.OpenNow.Open.Count > 0)
            table.AddRow(new Text($"Open now: {Names(made, answer.OpenNow.Open)}"), new Text(Expected(answer.OpenNow)));
        return table;
    }

    private static string Expected(Choice choice) =>
        $"{new Minutes((decimal)choice.ExpectedMinutes)}{(choice.Uncertainty > 0 ? $" ± {new Minutes((decimal)choice.Uncertainty)} (sampled, 95 %)" : "")}";

    private static string Odds(OpenUpAnswer answer)
    {
        var regret = answer.Best.Open.Count == 0
            ? $"Chance to be sorry: {answer.Regret:0%} (something has to be opened after all)."
            : $"Chance to be sorry: {answer.Regret:0%} (all would have come free without).";
        return answer.BreakEven is { } even
            ? $"{regret} Trying first pays while the chance of having to open after all is below {even:0%}; it is {answer.OpensLater:0%}."
            : $"{regret} No such chance would turn the advice.";
    }

    private static Table Openings(OpenUpCase made)
    {
        var table = new Table { Border = TableBorder.None };
        foreach (var heading in new[] { "Could be opened", "Open and close", "For tries at" })
            table.AddColumn(heading);
        foreach (var (opening, number) in made.Question.Openings.Select((opening, number) => (opening, number)))
        {
            var joints = made.Question.Joints.Where(joint => joint.Needs.Values.Any(needs => needs.Contains(number)))
                .Select(joint => joint.Id);
            table.AddRow(new Text(Short(opening)), new Text(new Minutes(OpenUpReport.MinutesOf(made.Question, opening)).ToString()),
                new Text(string.Join(", ", joints)));
        }

        return table;
    }

    private static Rows Tries(OpenUpAnswer answer) => new(answer.Joints.GroupBy(joint => (joint.Tries, joint.WaitsForMore)).Select(alike =>
    {
        var names = string.Join(", ", alike.Select(joint => joint.Joint));
        return new Text(!alike.Key.WaitsForMore ? $"{names}: to the end with what is open then."
            : alike.Key.Tries.Count == 0 ? $"{names}: nothing is worth trying before more is open."
            : $"{names}: first {string.Join(", ", alike.Key.Tries)}.");
    }));

    private static Markup Told(OpenUpCase made, Turning turning) => new(
        $"[bold]Would change it:[/] {turning.Rung.Id.Safe()} at {turning.Joint.Safe()}. If it comes free ({turning.Frees:0%}): {Names(made, turning.IfFreed).Safe()}. "
        + $"If it holds: {Names(made, turning.IfHeld).Safe()}.");

    private static Rows Notes(OpenUpCase made)
    {
        var lines = new List<IRenderable>();
        if (made.AssumedInHand.Count > 0)
            lines.Add(new Text($"Taken to be in hand before it is destroyed: {string.Join(", ", made.AssumedInHand)}."));
        if (made.TakenAsShielded.Count > 0)
            lines.Add(new Text(
                $"Taken to be shielded before any heat: {string.Join(", ", made.TakenAsShielded.Take(6))}{(made.TakenAsShielded.Count > 6 ? $" and {made.TakenAsShielded.Count - 6} more" : "")}."));
        lines.AddRange(made.OutOfTheQuestion.Select(fault => new Text(fault.ToString())));
        lines.Add(new Text(
            $"Opening later takes {made.Question.Later.Once} once and {made.Question.Later.Factor:0.##} times the minutes (set by --later-minutes and --later-factor)."));
        lines.AddRange(made.Origins.Select(origin => new Text($"Where the chances come from: {origin}")));
        lines.Add(new Markup($"[yellow]This opens no gate: ask refettle stuck before every try. {Wording.Safety.Safe()}[/]"));
        return new(lines);
    }

    private static string Names(OpenUpCase made, ValueList<string> open) => open.Count == 0
        ? "open nothing yet"
        : string.Join("; ", made.Question.Openings.Where(opening => open.Contains(opening.Id)).Select(Short));

    private static string Short(Opening opening)
    {
        const int most = 4;
        var words = opening.Says.Split(", ");
        return words.Length <= most ? opening.Says : $"{string.Join(", ", words.Take(most - 1))} and {words.Length - most + 1} more";
    }
}
