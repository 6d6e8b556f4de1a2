using System.Collections;
using Refettle.Access;

namespace Refettle.Web.Drawing;

/// <summary>One step waits for another.</summary>
/// <param name="From">The number of the earlier step, from 0.</param>
/// <param name="To">The number of the step that waits for it.</param>
public readonly record struct Link(int From, int To);

/// <summary>Which steps wait directly for which. A link that follows from other links is left out.</summary>
/// <param name="Count">How many steps there are; a link always leads from a smaller number to a greater one.</param>
public sealed record PlanGraph(int Count, ValueList<Link> Links)
{
    public static PlanGraph Of(Plan plan)
    {
        var stepOf = new Dictionary<Fact, int>();
        var ancestors = new BitArray[plan.Steps.Count];
        var links = new List<Link>();
        for (var step = 0; step < plan.Steps.Count; step++)
        {
            ancestors[step] = new BitArray(plan.Steps.Count);
            links.AddRange(Direct(Needed(plan.Steps[step], stepOf), step, ancestors));
            stepOf[plan.Steps[step].Fact] = step;
        }

        return new(plan.Steps.Count, links.ToValueList());
    }

    /// <summary>The steps that a step needs and that the plan holds, latest first. What is done already is no step.</summary>
    private static int[] Needed(Step step, Dictionary<Fact, int> stepOf) =>
        [.. step.Needs.Where(stepOf.ContainsKey).Select(need => stepOf[need]).Distinct().OrderDescending()];

    private static IEnumerable<Link> Direct(int[] needed, int step, BitArray[] ancestors)
    {
        foreach (var need in needed)
        {
            if (ancestors[step][need])
                continue;
            ancestors[step].Or(ancestors[need]);
            ancestors[step][need] = true;
            yield return new(need, step);
        }
    }
}
