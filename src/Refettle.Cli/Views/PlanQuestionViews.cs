using Refettle.Access;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Refettle.Cli.Views;

/// <summary>Answers to questions about a plan.</summary>
internal static class PlanQuestionViews
{
    public static IRenderable Of(WhyAnswer answer) => answer.Goals.Count == 0
        ? new Text($"{answer.Fact} is not in the plan.")
        : new Rows(
            new Text($"{answer.Fact} is needed for {Wording.Facts(answer.Goals)}:"),
            new Text("  " + string.Join(" → ", answer.Path)));

    public static IRenderable Of(WithinAnswer answer)
    {
        var table = new Table { Border = TableBorder.None };
        table.AddColumns("Also", "What", "On top", "");
        table.Columns[2].RightAligned();
        foreach (var extra in answer.Extras)
            table.AddRow(new Text($"{extra.Fact}"), new Text(extra.Says), new Text($"{extra.Cost.Total}"),
                new Text(extra.Proven ? "" : "or less"));
        return new Rows(
            new Text($"With {Wording.Facts(answer.Plan.Question.Goals)} done ({answer.Plan.Cost.Total}), there come within reach:"),
            answer.Extras.Count == 0 ? new Text("  nothing more") : table);
    }

    public static IRenderable Of(Plan best, IReadOnlyCollection<OtherPlan> others) => new Rows([
        new Text($"Best: {Wording.Of(best.Cost)}"),
        .. others.SelectMany((other, index) => Other(best, other, index + 2)),
        .. others.Count == 0 ? new[] { new Text("There is no other plan.") } : [],
    ]);

    public static IRenderable Of(Comparison comparison)
    {
        var table = new Table { Border = TableBorder.None };
        table.AddColumns("", "Steps", "Minutes", "");
        table.Columns[1].RightAligned();
        table.Columns[2].RightAligned();
        Row("first", comparison.First);
        Row("second", comparison.Second);
        Row("both at once", comparison.Both);
        return new Rows(table,
            new Text(comparison.Shared is { } shared ? $"Doing both in one go saves {shared}." : "What has no plan is not compared."));

        void Row(string name, Plan plan) => table.AddRow(
            new Text($"{name}: {Wording.Facts(plan.Question.Goals)}"),
            new Text(plan.Status == PlanStatus.Impossible ? "" : $"{plan.Steps.Count}"),
            new Text(plan.Status == PlanStatus.Impossible ? "" : $"{plan.Cost.Total}"), new Text(Wording.Of(plan)));
    }

    private static IEnumerable<IRenderable> Other(Plan best, OtherPlan other, int rank)
    {
        yield return new Text($"{rank}. {other.Plan.Cost.Total - best.Cost.Total} more: {Wording.Of(other.Plan.Cost)}");
        if (other.Instead.Count > 0)
            yield return new Text($"   does {Wording.Facts(other.Instead)}");
        if (other.Spares.Count > 0)
            yield return new Text($"   spares {Wording.Facts(other.Spares)}");
        if (other.OtherWays.Count > 0)
            yield return new Text($"   another way: {string.Join(", ", other.OtherWays)}");
    }
}
