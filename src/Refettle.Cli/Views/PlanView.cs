using Refettle.Access;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Refettle.Cli.Views;

/// <summary>A plan as a list of steps to work through.</summary>
internal static class PlanView
{
    public static IRenderable Of(Plan plan) => plan.Status == PlanStatus.Impossible
        ? ObstacleView.Of(plan)
        : new Rows(Head(plan), Steps(plan), Foot(plan));

    private static Rows Head(Plan plan)
    {
        var lines = new List<IRenderable>
            { new Markup($"[bold]{Wording.Facts(plan.Question.Goals).Safe()}[/] — {Wording.Of(plan).Safe()}") };
        if (plan.Question.Without.Count > 0)
            lines.Add(new Text($"without touching {string.Join(", ", plan.Question.Without)}"));
        lines.Add(new Text(plan.Steps.Count == 0
            ? "Nothing left to do."
            : $"{Wording.Count(plan.Steps.Count(step => !PlanOutline.FollowsByItself(step)), "step")}, {Wording.Of(plan.Cost)}"));
        if (plan.ExtraStanceChanges > Minutes.Zero)
            lines.Add(new Text(
                $"and {plan.ExtraStanceChanges} for further changes of stance, which the search for the least cost does not weigh"));
        lines.Add(Text.Empty);
        return new(lines);
    }

    private static Table Steps(Plan plan)
    {
        var table = new Table { Border = TableBorder.None, ShowHeaders = plan.Steps.Count > 0, Expand = true };
        table.AddColumn(new TableColumn("#") { Alignment = Justify.Right, NoWrap = true });
        table.AddColumn(new TableColumn("What to do"));
        table.AddColumn(new TableColumn("Tool"));
        table.AddColumn(new TableColumn("Open") { Alignment = Justify.Right, NoWrap = true });
        table.AddColumn(new TableColumn("Close") { Alignment = Justify.Right, NoWrap = true });
        var told = new Dictionary<string, int>();
        foreach (var chapter in PlanOutline.Of(plan).Chapters)
        {
            table.AddRow(Text.Empty, new Markup($"[bold]{Scene(chapter).Safe()}[/]"), Text.Empty, Text.Empty, Text.Empty);
            foreach (var line in chapter.Lines)
                AddLine(table, line, told);
        }

        return table;
    }

    private static void AddLine(Table table, OutlineLine line, Dictionary<string, int> told)
    {
        var step = line.Step;
        table.AddRow(new Text($"{line.Number}"), new Text(step.Says), new Text(TakesTime(step) ? step.Tool : ""), new Text(Open(step)),
            new Text(Time(step.Cost.Close, step)));
        if (line.Along.Count > 0)
            table.AddRow(Text.Empty, Remark("dim", Along(line)), Text.Empty, Text.Empty, Text.Empty);
        foreach (var remark in Remarks(line, told))
            table.AddRow(Text.Empty, remark, Text.Empty, Text.Empty, Text.Empty);
    }

    private static string Along(OutlineLine line)
    {
        const int most = 3;
        var names = line.Along.Select(step => step.Fact.ToString()).ToList();
        var rest = names.Count - most;
        return rest <= 1 ? $"then {string.Join(", ", names)}" : $"then {string.Join(", ", names.Take(most))} and {rest} more";
    }

    private static Rows Foot(Plan plan)
    {
        if (plan.Steps.Count == 0)
            return new Rows();
        var origins = plan.Steps.Where(TakesTime).GroupBy(step => step.Origin).OrderByDescending(group => group.Count())
            .Select(group => $"{group.Count()} {Wording.Of(group.Key)}");
        var star = plan.Steps.Any(IsGuess) ? " (*)" : "";
        return new(Text.Empty, new Text($"Where the minutes come from, by steps: {string.Join("; ", origins)}{star}."),
            new Markup($"[yellow]{Wording.Safety.Safe()}[/]"));
    }

    private static string Scene(Chapter chapter) =>
        string.Join(" · ", new[] { chapter.Place, chapter.Posture, chapter.Stance }.Distinct().Where(word => !string.IsNullOrEmpty(word)));

    private static bool TakesTime(Step step) => step.Cost.Open + step.Cost.Close > Minutes.Zero;

    private static bool IsGuess(Step step) => step.Origin == Origin.Default && TakesTime(step);

    private static string Open(Step step) => Time(step.Cost.Open, step) + (IsGuess(step) ? "*" : "");

    private static string Time(Minutes minutes, Step step) => TakesTime(step) ? $"{minutes}" : "";

    /// <summary>Props, losses and cautions, also of what comes along; a caution in full the first time only.</summary>
    private static IEnumerable<IRenderable> Remarks(OutlineLine line, Dictionary<string, int> told)
    {
        var (step, cautions) = (line.Step, line.Cautions.ToList());
        if (step.Prop is not null)
            yield return Remark("bold", step.Prop);
        if (step.Destroys.Count > 0)
            yield return Remark("red", $"Destroys {string.Join(", ", step.Destroys)}");
        foreach (var caution in cautions.Where(caution => told.TryAdd(caution, line.Number)))
            yield return Remark("yellow", $"! {caution}");
        var earlier = cautions.Select(caution => told[caution]).Where(first => first != line.Number).Distinct().Order().ToList();
        if (earlier.Count > 0)
            yield return Remark("yellow", $"! as at step {string.Join(" and ", earlier)}");
    }

    private static Padder Remark(string style, string text) => new(new Markup($"[{style}]{text.Safe()}[/]"), new Padding(2, 0, 0, 0));
}
