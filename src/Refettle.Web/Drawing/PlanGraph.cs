using System.Collections;
using Refettle.Access;

namespace Refettle.Web.Drawing;

/// <summary>One thing waits for another.</summary>
/// <param name="From">The number of the earlier one, from 0.</param>
/// <param name="To">The number of the one that waits for it.</param>
public readonly record struct Link(int From, int To);

/// <summary>What waits directly for what. A link that follows from other links is left out.</summary>
/// <param name="Count">How many things there are; a link always leads from a smaller number to a greater one.</param>
public sealed record PlanGraph(int Count, ValueList<Link> Links)
{
    /// <summary>The steps of a plan. What is done already is no step.</summary>
    public static PlanGraph Of(Plan plan)
    {
        var stepOf = new Dictionary<Fact, int>();
        var links = new List<Link>();
        for (var step = 0; step < plan.Steps.Count; step++)
        {
            links.AddRange(plan.Steps[step].Needs.Where(stepOf.ContainsKey).Select(need => new Link(stepOf[need], step)));
            stepOf[plan.Steps[step].Fact] = step;
        }

        return Reduced(plan.Steps.Count, links);
    }

    /// <summary>The bundles of a plan's steps.</summary>
    public static PlanGraph Of(PlanGraph steps, Bundles bundles) =>
        Reduced(bundles.Steps.Count,
            steps.Links.Select(link => new Link(bundles.Of(link.From), bundles.Of(link.To))).Where(link => link.From != link.To));

    private static PlanGraph Reduced(int count, IEnumerable<Link> links)
    {
        var needed = links.Distinct().ToLookup(link => link.To, link => link.From);
        var ancestors = Enumerable.Range(0, count).Select(_ => new BitArray(count)).ToArray();
        return new(count, Enumerable.Range(0, count).SelectMany(to => Direct(needed[to], to, ancestors)).ToValueList());
    }

    /// <summary>Latest first: what an earlier one already brings along is not linked again.</summary>
    private static IEnumerable<Link> Direct(IEnumerable<int> needed, int to, BitArray[] ancestors)
    {
        foreach (var need in needed.OrderDescending())
        {
            if (ancestors[to][need])
                continue;
            ancestors[to].Or(ancestors[need]);
            ancestors[to][need] = true;
            yield return new(need, to);
        }
    }
}
