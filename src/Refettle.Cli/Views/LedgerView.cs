using Refettle.Forecast;
using Refettle.Ledger;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Refettle.Cli.Views;

/// <summary>Hours and money.</summary>
internal static class LedgerView
{
    public static IRenderable Of(Books books, StillToCome toCome, bool entries) => new Rows(
    [
        new Markup($"[bold]Spent {books.Spent:0.00} {books.Currency.Safe()} and {books.Worked}; owed {books.Owed:0.00}.[/]"),
        .. books.Unpriced.Any()
            ? [new Markup(
                $"[yellow]Without a price, so not in the sums: {string.Join(", ", books.Unpriced.Select(line => line.Says)).Safe()}[/]")]
            : Array.Empty<IRenderable>(),
        Jobs(books),
        .. books.NotChosen is { Length: > 0 } more ? [new Text(more)] : Array.Empty<IRenderable>(),
        .. ToCome(books, toCome),
        .. entries ? [Text.Empty, Money(books), Work(books)] : Array.Empty<IRenderable>(),
    ]);

    private static Table Jobs(Books books)
    {
        var table = Right(new Table { Border = TableBorder.None }
            .AddColumns("Job", "", "Planned", "Spent", "Owed", "Planned work", "Worked"), 2);
        foreach (var job in books.JobsThatCount)
        {
            table.AddRow(new Text(job.Name), new Text(job.IsDone ? "done" : job.Job is null ? "" : job.IsChosen ? "chosen" : "not chosen"),
                Amount(job.Job is null ? null : job.PlannedMoney), Amount(job.Spent), Amount(job.Owed),
                new Text(job.Job is null ? "" : $"{job.PlannedWork}"), new Text($"{job.Worked}"));
        }

        return table;
    }

    private static IEnumerable<IRenderable> ToCome(Books books, StillToCome toCome)
    {
        yield return Text.Empty;
        yield return new Markup(
            $"[bold]Still to come[/] for what is chosen, by plan {toCome.PlannedWork} and {toCome.PlannedMoney:0.00} {books.Currency.Safe()}:");
        yield return new Text(
            $"  as likely as not up to {toCome.WorkHalf} and {toCome.MoneyHalf:0.00}; four times in five up to {toCome.WorkFourInFive} and {toCome.MoneyFourInFive:0.00}.");
        yield return new Text($"  Hours: {Learned(toCome.Pace, "timed task")} Money: {Learned(toCome.Price, "finished job")}");
    }

    private static string Learned(OverrunBelief belief, string what) => belief.Tasks == 0
        ? $"no {what} yet to learn from; {belief.MiddleFactor:0.00} × the plan as a middle, held very loosely (common practice, no source)."
        : $"from {Wording.Count(belief.Tasks, what)}, half take {belief.MiddleFactor:0.00} × the plan or less.";

    private static Table Money(Books books)
    {
        var table = Right(new Table { Border = TableBorder.None }.AddColumns("Day", "For", "Job", "Receipt", "Spent", "Owed"), 4);
        foreach (var line in books.Money)
            table.AddRow(new Text($"{line.On:yyyy-MM-dd}"), new Text(line.Says), new Text(line.Job ?? ""),
                new Text(line.Attachment is null ? "" : line.Attachment.Length > 12 ? line.Attachment[..12] : line.Attachment),
                Amount(line.Spent), Amount(line.Owed));
        return table;
    }

    private static Table Work(Books books)
    {
        var table = Right(new Table { Border = TableBorder.None }.AddColumns("Timed", "Job", "Planned", "Took"), 2);
        foreach (var work in books.Work)
            table.AddRow(new Text(work.Says), new Text(work.Job ?? ""), new Text(work.Planned is { } planned ? $"{planned}" : ""),
                new Text($"{work.Took}"));
        return table;
    }

    private static Table Right(Table table, int from)
    {
        foreach (var column in table.Columns.Skip(from))
            column.RightAligned().NoWrap();
        return table;
    }

    private static Text Amount(decimal? amount) => new(amount is { } some ? $"{some:0.00}" : "");
}
