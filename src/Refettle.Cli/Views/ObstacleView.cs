using Refettle.Access;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Refettle.Cli.Views;

/// <summary>Why goals cannot be reached.</summary>
internal static class ObstacleView
{
    public static IRenderable Of(Plan plan)
    {
        var lines = new List<IRenderable>
            { new Markup($"[bold]{Wording.Facts(plan.Question.Goals).Safe()}[/] — {Wording.Of(plan).Safe()}") };
        if (plan.Obstacle is { } obstacle)
            lines.AddRange(Reasons(obstacle));
        return new Rows(lines);
    }

    private static IEnumerable<IRenderable> Reasons(Obstacle obstacle)
    {
        if (obstacle.Forbidden.Count > 0)
            yield return new Text("It would be possible if all of these were allowed; fewer do not help:");
        foreach (var forbidden in obstacle.Forbidden)
            yield return new Text($"  {forbidden}");
        if (obstacle.Stuck.Count == 0)
            yield break;
        yield return new Text(obstacle.Stuck.Count == 1
            ? "This has no way that works:"
            : "These wait for each other, or have no way that works:");
        foreach (var fact in obstacle.Stuck)
            yield return new Text($"  {fact}");
        foreach (var why in obstacle.Fire.Concat(obstacle.Weak))
            yield return new Text($"  {why}");
    }
}
