using Refettle.Access;

namespace Refettle.Web.Drawing;

/// <summary>Steps that are drawn as one box: a step, and before it the joints that are opened for it alone.</summary>
/// <remarks>A plan opens three joints for each part that comes off; drawn one by one they hide what waits for what. Putting a step
/// into the only one that needs it never makes a circle.</remarks>
public sealed class Bundles
{
    private readonly int[] _bundleOf;

    /// <param name="graph">The plan's steps.</param>
    public Bundles(Plan plan, PlanGraph graph)
    {
        var main = Mains(plan, graph);
        var mains = Enumerable.Range(0, main.Length).Where(step => main[step] == step).ToArray();
        _bundleOf = [.. main.Select(step => Array.BinarySearch(mains, step))];
        Steps = [.. mains.Select(of => ValueList.Create(Enumerable.Range(0, main.Length).Where(step => main[step] == of).ToArray()))];
    }

    /// <summary>For each bundle its steps in the plan's order; the last is the one it is named after.</summary>
    public IReadOnlyList<ValueList<int>> Steps { get; }

    /// <summary>The bundle that a step is in.</summary>
    public int Of(int step) => _bundleOf[step];

    /// <summary>For each step, the step whose bundle it is in: itself, unless it opens a joint for one other step alone.</summary>
    private static int[] Mains(Plan plan, PlanGraph graph)
    {
        var users = graph.Links.ToLookup(link => link.From, link => link.To);
        var main = Enumerable.Range(0, plan.Steps.Count).ToArray();
        for (var step = main.Length - 1; step >= 0; step--)
        {
            if (plan.Steps[step].Fact.Kind == FactKind.Open && users[step].Count() == 1
                && !plan.Question.Goals.Contains(plan.Steps[step].Fact))
                main[step] = main[users[step].Single()];
        }

        return main;
    }
}
