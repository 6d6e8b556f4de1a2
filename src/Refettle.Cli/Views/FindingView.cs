using Refettle.Judging;
using Refettle.Logbook;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Refettle.Cli.Views;

/// <summary>What was found of a thing, and what can be said of it.</summary>
internal static class FindingView
{
    public static IRenderable Of(Car car, string thing, Condition condition, ValueList<ConditionScale> scales)
    {
        var lines = new List<IRenderable>
            { new Markup($"[bold]{thing.Safe()}[/]{(condition.Worst is { } worst ? $": {Word(worst)}" : ": nothing found yet")}") };
        lines.AddRange(Lines(condition));
        if (thing.StartsWith("part ", StringComparison.Ordinal) && car.Unsound.Contains(thing["part ".Length..]))
            lines.Add(new Markup("[red]Too weak to carry the car: no stance may rest on it.[/]"));
        lines.AddRange(LimitWords.For(car, thing).Select(limit => new Text($"  Limit: {limit}")));
        lines.Add(new Text("What can be said:"));
        lines.AddRange(
            scales.Select(scale => new Text($"  {scale.Id}: {string.Join(" · ", scale.Words.Select(word => word.Word))}{Tests(scale)}")));
        lines.Add(new Markup(
            $"[dim]Where the words come from: {string.Join("; ", scales.Select(scale => scale.Origin).Distinct()).Safe()}[/]"));
        return new Rows(lines);
    }

    /// <summary>The newest findings, a line each, with what the readings decide.</summary>
    public static IEnumerable<IRenderable> Lines(Condition condition)
    {
        foreach (var finding in condition.Newest)
        {
            yield return new Text(
                $"  {JudgingSayings.Of(finding)}{(finding.Photos.Count > 0 ? $" ({Wording.Count(finding.Photos.Count, "photo", "photos")})" : "")}");
            if (condition.Measured.FirstOrDefault(one => one.Finding == finding) is { } measured)
                yield return new Text($"    {measured.Told()}");
        }
    }

    public static string Word(Severeness how) => how.ToString().ToLowerInvariant();

    private static string Tests(ConditionScale scale) =>
        scale.Tests.Count == 0 ? "" : $"; measured: {string.Join(", ", scale.Tests.Select(test => $"{test.What} ({test.Unit})"))}";
}
