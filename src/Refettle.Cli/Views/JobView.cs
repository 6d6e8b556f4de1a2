using Spectre.Console;
using Spectre.Console.Rendering;

namespace Refettle.Cli.Views;

/// <summary>Jobs, a line each.</summary>
internal static class JobView
{
    public static IRenderable Of(Car car)
    {
        if (car.Jobs.Count == 0)
            return new Text(
                "No job yet. Think of one: refettle job add new-clutch \"goals=free(clutch)\" worth=150 \"work=40 min\" parts=120");
        var table = new Table { Border = TableBorder.None };
        table.AddColumns("Job", "", "What", "Worth", "Work", "Parts", "");
        table.Columns[0].NoWrap();
        foreach (var column in table.Columns.Skip(3).Take(3))
            column.RightAligned().NoWrap();
        foreach (var job in car.Jobs)
            table.AddRow(new Text(job.Id), new Text(Word(job.Wish)), new Text(What(job)), new Text($"{job.Worth}"), new Text($"{job.Work}"),
                new Text($"{job.Parts.Amount:0.##}"), new Text(Standing(car, job)));
        return new Rows(new Text($"To spend: {Of(car.Means, car.Currency)}."), table);
    }

    public static string Word(Wish wish) => wish.ToString().ToLowerInvariant();

    public static string Of(Means means, string currency)
    {
        string?[] limits =
        [
            means.Budget is { } budget ? $"{budget.Amount:0.##} {currency}".TrimEnd() : null,
            means.Hours is { } hours ? $"{hours}" : null,
            means.By is { } day ? $"ready by {day:yyyy-MM-dd}" : null,
            means.PerPoint is { } rate ? $"{rate.Amount:0.##} {currency} a point" : null,
        ];
        return limits.All(limit => limit is null) ? "no limit" : string.Join(", ", limits.OfType<string>());
    }

    private static string What(Job job) =>
        job.Waits.Count == 0 ? job.Name : $"{job.Name} ({string.Join(", ", job.Waits.Select(wait => $"{wait.Says} {wait.Days:0.#} d"))})";

    private static string Standing(Car car, Job job) =>
        car.JobsDone.Contains(job.Id) ? "done" : car.Scope?.Contains(job.Id) ?? false ? "chosen" : "";
}
